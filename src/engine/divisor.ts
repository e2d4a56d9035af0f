/** What a formula divides by, where it divides by zero. */
import { phrase } from "../../functions/phrase.ts";
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { cellText } from "./label.ts";
import { areasOf, isSingle } from "./references.ts";

interface Dividing {
  readonly book: Book;
  readonly formula: string;
  readonly page: number;
  readonly value: (place: Place) => unknown;
}

/** What it divides by, in a sentence; null where that may be several cells. */
export function dividesBy(dividing: Dividing): string | null {
  const divisor = divisorOf(dividing);
  if (!divisor) return null;
  const { book, value } = dividing;
  const held = value(divisor) === 0 ? "0" : phrase`blank`;
  return phrase`this divides by zero: ${cellText(book, divisor)} is ${held}; give it a number other than 0`;
}

/** The only single cell behind the formula that is blank or 0. */
export function divisorOf({ book, formula, page, value }: Dividing): Place | null {
  if (!isFormula(formula)) return null;
  const cells = areasOf(book, formulaTree(formula), page).flatMap((area) =>
    isSingle(area) ? [{ page: area.page, row: area.top, column: area.left }] : [],
  );
  const nothing = new Map(cells.filter((one) => isNothing(value(one))).map((one) => [placeKey(one), one]));
  const [first] = nothing.values();
  return first && nothing.size === 1 ? first : null;
}

const isNothing = (value: unknown): boolean => value === 0 || value === null || value === "";
