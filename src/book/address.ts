/** Cell addresses: "B3" on a page, "Draft!B3" or "'Over skirt'!B3" in a book. */
import type { Book } from "./shape.ts";

/** Where a cell is; all three counted from 0. */
export interface Place {
  readonly page: number;
  readonly row: number;
  readonly column: number;
}

/** A key for maps and sets of cells: equal for equal places, whichever object holds them. */
export const placeKey = ({ page, row, column }: Place): string => `${page}.${row}.${column}`;

/** Compares cells by their order in the book: by page, then row, then column. */
export const comparePlaces = (a: Place, b: Place): number =>
  a.page - b.page || a.row - b.row || a.column - b.column;

/** A block of cells on a page, both corners included; all counted from 0. */
export interface Block {
  readonly page: number;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** 0 → "A", 25 → "Z", 26 → "AA". */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26);
  return (rest > 0 ? columnLetters(rest - 1) : "") + String.fromCharCode(65 + (column % 26));
}

/** "A" → 0, "AA" → 26. */
export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

export const cellAddress = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** Where "B3" is on its page; null for a text that is not the address of a cell. */
export function rowAndColumn(address: string): Pick<Place, "row" | "column"> | null {
  const [, letters, figures] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
  const row = Number(figures) - 1;
  return letters === undefined || row < 0 ? null : { row, column: columnNumber(letters) };
}

/** A page's title as formulas write it: quoted unless it is a plain word. */
export const pageReference = (title: string): string =>
  /^[A-Za-z_][A-Za-z0-9_]*$/.test(title) ? title : `'${title.replaceAll("'", "''")}'`;

/** "Draft!B3". */
export function fullAddress(book: Book, { page, row, column }: Place): string {
  return `${pageReference(book.pages[page]!.title)}!${cellAddress(row, column)}`;
}

const FULL = /^(?:'((?:[^']|'')+)'|([^'!]+))!\$?([A-Za-z]{1,3})\$?(\d{1,6})$/;

/** Where "Draft!B3" is among these pages, or null. */
export function findPlace(
  { pages }: { readonly pages: readonly { readonly title: string }[] },
  address: string,
): Place | null {
  const found = FULL.exec(address.trim());
  if (!found) return null;
  const title = (found[1]?.replaceAll("''", "'") ?? found[2]!).toLowerCase();
  const page = pages.findIndex((one) => one.title.toLowerCase() === title);
  const row = Number(found[4]) - 1;
  return page < 0 || row < 0 ? null : { page, row, column: columnNumber(found[3]!) };
}

/** The note of a cell; "" when it has no note. */
export const noteAt = (book: Book, { page, row, column }: Place): string =>
  book.pages[page]?.notes[cellAddress(row, column)] ?? "";
