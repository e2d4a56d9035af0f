/**
 * A typed cell that a question varies: what kind of figure it holds, the step that suits it, and
 * how a figure is typed into it so that it still means the same kind of thing.
 */

import { withDecimalMark } from "../../functions/decimal.ts";
import type { Kind } from "../../functions/define.ts";
import { markSize, tapeText } from "../../functions/fractions.ts";
import { toDigits } from "../../functions/number-text.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { type } from "../book/edit.ts";
import { isFormula } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { type Content, understand } from "./content.ts";
import { workedBook } from "./fitted-cells.ts";
import { Kinds } from "./kinds.ts";
import { cellKey } from "./label.ts";
import { dayText, plainNumber, show } from "./show.ts";

/** Why a question can't be asked, in one sentence. */
export interface Problem {
  readonly problem: string;
}

export const isProblem = (answer: object): answer is Problem => "problem" in answer;

export interface VariedCell {
  readonly place: Place;
  /** Its name, or its address. */
  readonly label: string;
  readonly kind: Kind;
  /** What is typed there now, lengths in the book's unit; null when it is blank. */
  readonly now: number | null;
  /** The step that suits it: the tape's finest mark, 1 for what is counted, the last place that was typed. */
  readonly step: number;
  /** Only whole numbers make sense. */
  readonly whole: boolean;
}

function contentAt(book: Book, place: Place): Content {
  const column = book.pages[place.page]?.columns[place.column]?.kind ?? "any";
  return understand(typedAt(book, place.page, place.row, place.column), column, book.unit, book.decimal);
}

/** Days since 1899-12-30, as the engine counts them. */
const dayNumber = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / 86_400_000 + 25_569;

/** The number in a content, or null when it holds no number. */
function figureIn(content: Content): number | null {
  switch (content.is) {
    case "length":
    case "number":
    case "share":
      return content.value;
    case "date":
      return dayNumber(content.value);
    default:
      return null;
  }
}

/** The varied cell at a place, or why it can't be varied. */
export function variedCellAt(book: Book, place: Place): VariedCell | Problem {
  const label = cellKey(book, place);
  const typed = typedAt(book, place.page, place.row, place.column);
  if (isFormula(typed)) {
    return {
      problem: phrase`${label} is worked out by ${short(typed)}; vary a cell with a typed number instead`,
    };
  }
  const content = contentAt(book, place);
  const now = figureIn(content);
  const column = book.pages[place.page]?.columns[place.column]?.kind ?? "any";
  if (now === null && (content.is !== "blank" || column === "text")) {
    return {
      problem: phrase`${label} holds ${short(typed) || phrase`a text`}; vary a cell with a typed number instead`,
    };
  }
  // A blank cell is taken for what its formulas would make of a figure there.
  const kind = new Kinds(workedBook(now === null ? type(book, [{ ...place, typed: "1" }]) : book)).of(place);
  const whole = kind === "count" || kind === "days";
  return { place, label, kind, now, step: usualStep(book, kind, typed, now), whole };
}

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 37)}...` : text);

function usualStep(book: Book, kind: Kind, typed: string, now: number | null): number {
  if (kind === "length") return markSize(book.mark, book.unit);
  if (kind === "count" || kind === "days") return 1;
  const places = /[.,](\d+)\D*$/.exec(typed)?.[1]?.length ?? 0;
  const last = 10 ** -places / (typed.includes("%") ? 100 : 1);
  return now !== null && kind === "share" && last === 1 ? 0.1 : last;
}

/** Reads a figure for a varied cell as it may be typed there: "8 1/2", "42 cm", "6", "5%", "2026-05-04". */
export function figureFor(book: Book, cell: Pick<VariedCell, "kind">, text: string): number | null {
  const content = understand(text, cell.kind === "length" ? "length" : "any", book.unit, book.decimal);
  const fits =
    content.is === "date" ? cell.kind === "days" : content.is !== "length" || cell.kind === "length";
  return fits ? figureIn(content) : null;
}

/** A figure as the maker reads it: a length on the tape when it falls on a mark, else in decimals. */
export function figureText(book: Book, kind: Kind, figure: number): string {
  if (kind !== "length") return show(figure, kind, book);
  const tape = tapeText(figure, book.unit, book.mark, book.decimal);
  return figureFor(book, { kind }, tape) === clean(figure) ? tape : plainNumber(figure, 4, book.decimal);
}

/** A number without the rounding errors of binary arithmetic: at most 12 digits. */
export const clean = (figure: number): number => toDigits(figure, 12);

/** What to type in a varied cell so that it holds this figure and is still the same kind of content. */
export function typedFor(book: Book, cell: VariedCell, figure: number): string {
  const was = contentAt(book, cell.place).is;
  const plain = withDecimalMark(String(clean(figure)), book.decimal);
  const column = book.pages[cell.place.page]?.columns[cell.place.column]?.kind ?? "any";
  const tape = tapeText(figure, book.unit, book.mark, book.decimal);
  const ways =
    was === "date"
      ? [dayText(figure)]
      : was === "share"
        ? [`${withDecimalMark(String(clean(figure * 100)), book.decimal)}%`]
        : was === "length"
          ? [tape, `${tape} ${book.unit}`, plain, `${plain} ${book.unit}`]
          : [plain];
  const same = ways.find((typed) => {
    const content = understand(typed, column, book.unit, book.decimal);
    const read = figureIn(content);
    return content.is === was && read !== null && clean(read) === clean(figure);
  });
  return same ?? plain;
}
