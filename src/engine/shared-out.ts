/**
 * A length divided into equal parts whose marks on the tape do not add up to it again: six gores
 * of a waist of 27 1/4 read 4 1/2 each, and six times 4 1/2 are 27. What to cut instead, in a sentence.
 */

import { finerMarks, markSize, roundTo, tapeText } from "../../functions/fractions.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { formulaTree, isFormula, type Tree } from "../book/formula.ts";
import { lookUp } from "../book/names.ts";
import { typedAt } from "../book/shape.ts";
import type { Engine } from "./engine.ts";
import type { Rule } from "./show.ts";

/** More parts than this are not cut one by one. */
const MOST_PARTS = 60;

/**
 * "6 of 4 1/2 make 27, 1/4 less than 27 1/4: make 4 of 4 1/2 and 2 of 4 5/8, or 5 of 4 1/2 and one
 * of 4 3/4"; null when the parts as shown add up to the whole as shown.
 */
export function sharedOut(part: number, parts: number, { unit, mark, decimal }: Rule): string | null {
  if (!Number.isInteger(parts) || parts < 2 || parts > MOST_PARTS || !(part > 0)) return null;
  const text = (length: number, on = mark) => tapeText(length, unit, on, decimal);
  const step = markSize(mark, unit);
  const marks = (length: number) => Math.round(roundTo(length, step) / step);
  const [whole, each] = [marks(part * parts), marks(part)];
  const off = each * parts - whole;
  if (off === 0) return null;
  const low = Math.floor(whole / parts);
  const more = whole - low * parts;
  const ways = [phrase`${parts - more} of ${text(low * step)} and ${more} of ${text((low + 1) * step)}`];
  if (Math.abs(off) > 1 && each * step > 0 && parts > 2 && whole - each * (parts - 1) > 0) {
    ways.push(
      phrase`${parts - 1} of ${text(each * step)} and one of ${text((whole - each * (parts - 1)) * step)}`,
    );
  }
  const finer = finerMarks(unit, mark).find((one) => {
    const size = markSize(one, unit);
    return Math.abs(roundTo(part, size) - part) < 1e-9 * part;
  });
  if (finer) ways.push(phrase`each ${text(part, finer)}`);
  const sum = text(each * parts * step);
  const gap = phrase`${text(Math.abs(off) * step)} ${off < 0 ? phrase`less` : phrase`more`} than ${text(whole * step)}`;
  return phrase`${parts} of ${text(each * step)} make ${sum}, ${gap}: make ${ways.join(", or ")}`;
}

/** The sentence for a cell whose formula divides a length by a count: "=waist/6". */
export function sharedOutAt(engine: Engine, place: Place): string | null {
  const typed = typedAt(engine.book, place.page, place.row, place.column);
  if (!isFormula(typed)) return null;
  const { value, kind } = engine.view(place);
  const tree = formulaTree(typed);
  if (kind !== "length" || typeof value !== "number" || tree.is !== "sign" || tree.sign !== "/") return null;
  const parts = countOf(engine, tree.args[1], place.page);
  return parts === null ? null : sharedOut(value, parts, engine.book);
}

/** The figure of a bare number or of the cell it names. */
function countOf(engine: Engine, tree: Tree | undefined, page: number): number | null {
  if (tree?.is === "number") return Number(tree.text);
  if (tree?.is !== "name" && tree?.is !== "cell") return null;
  const place = lookUp(engine.book, tree.text, page);
  const value = place && engine.value(place);
  return typeof value === "number" && engine.view(place as Place).kind !== "length" ? value : null;
}
