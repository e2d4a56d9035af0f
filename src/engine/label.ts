/** What a cell is called: the one place that decides the words by which a cell is mentioned. */

import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { fullAddress, type Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { nameFor, nameOf } from "../book/names.ts";
import type { Book } from "../book/shape.ts";
import { understand } from "./content.ts";

/** The longest label that is shown whole, in characters. */
const LONGEST = 60;

/** What a cell says about others: words, neither a figure nor an outline nor worked out. */
function wordsIn(book: Book, typed: string): string {
  const text = typed.trim();
  if (!/\p{L}/u.test(text) || isFormula(text) || /^[Mm][\s\d.+-]*\d/.test(text)) return "";
  return understand(text, "any", book.unit, book.decimal).is === "text" ? text : "";
}

interface FirstWords {
  readonly unit: Book["unit"];
  readonly decimal: Book["decimal"];
  /** In which cell they stand; −1 for a row without words. */
  readonly at: number;
  readonly words: string;
}

const rowsRead = rememberWithObject<readonly string[], { first: FirstWords | null }>();

/** The first words of a row. They are kept with the row, for every cell asks. */
function firstWords(book: Book, typed: readonly string[]): FirstWords {
  const { unit, decimal } = book;
  const kept = rowsRead(typed, () => ({ first: null }));
  if (kept.first?.unit !== unit || kept.first.decimal !== decimal) {
    const at = typed.findIndex((text) => wordsIn(book, text) !== "");
    kept.first = { unit, decimal, at, words: at < 0 ? "" : wordsIn(book, typed[at]!) };
  }
  return kept.first;
}

/** The words that begin a cell's row; null for a row without words before the cell. */
function wordsBefore(book: Book, { page, row, column }: Place): FirstWords | null {
  const typed = book.pages[page]?.rows[row];
  const first = typed ? firstWords(book, typed) : null;
  return first && first.at >= 0 && first.at < column ? first : null;
}

/** The words that begin a cell's row, with the column's heading where other cells stand between; null for a row without words. */
function rowLabel(book: Book, place: Place): string | null {
  const { page, row, column } = place;
  const first = wordsBefore(book, place);
  if (!first) return null;
  const { at, words } = first;
  const heading = at === column - 1 ? null : headingOf(book, { page, row, column });
  return short(heading === null ? words : `${words}, ${heading}`);
}

/** Headings that say no more of a cell than that it holds something. */
const SAYS_NOTHING = /^(?:values?|figures?)$/i;

function headingOf(book: Book, { page, column }: Place): string | null {
  const heading = (book.pages[page]?.columns[column]?.heading ?? "").trim();
  return heading === "" || SAYS_NOTHING.test(heading) ? null : short(heading);
}

function short(label: string): string {
  const line = label.replace(/[\p{C}\s]+/gu, " ");
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1).trimEnd()}…` : line;
}

/** The label of a cell: "hip over the pad", "waist, the widow"; its column's heading when its row has none; null when there is neither. */
export const labelOf = (book: Book, place: Place): string | null =>
  rowLabel(book, place) ?? headingOf(book, place);

/** A cell as it is read aloud: the words of its row, its column's heading and what it shows, "hip, Value: 39 1/2"; null for a cell without words before it. */
export function spokenCell(book: Book, place: Place, shown: string): string | null {
  const first = wordsBefore(book, place);
  if (!first) return null;
  const heading = (book.pages[place.page]!.columns[place.column]?.heading ?? "").trim();
  const words = short(first.words);
  return `${heading === "" ? words : `${words}, ${short(heading)}`}: ${shown.trim() || phrase`blank`}`;
}

/** A cell in a sentence: its label, or its name where its row has none, and its address after in brackets: "hip over the pad (Draft!B4)". */
export function cellText(book: Book, place: Place): string {
  const words = rowLabel(book, place) ?? nameOf(book, place) ?? headingOf(book, place);
  const address = fullAddress(book, place);
  return words === null ? address : `${words} (${address})`;
}

/** As `cellText`, with the name too, by which a formula or an option calls the cell: "hip over the pad (hip_over_pad, Draft!B4)". A name that repeats the label is left out. */
export function cellTextWithName(book: Book, place: Place): string {
  const [label, name] = [rowLabel(book, place), nameFor(book, place, null)];
  const address = fullAddress(book, place);
  return label === null || name === null || label.toLowerCase() === name.toLowerCase()
    ? cellText(book, place)
    : `${label} (${name}, ${address})`;
}

/** A cell as a formula or an option calls it, for tables and data: its name, with its page where several pages have that name, else its address. */
export const cellKey = (book: Book, place: Place): string =>
  nameFor(book, place, null) ?? fullAddress(book, place);
