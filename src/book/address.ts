/** Cell addresses: "B3" on a page, "Draft!B3" or "'Over skirt'!B3" in a book. */
import { rememberWithObject } from "../../functions/memo.ts";
import type { Book } from "./shape.ts";

/** Where a cell is; all three counted from 0. */
export interface Place {
  readonly page: number;
  readonly row: number;
  readonly column: number;
}

/** A key for maps and sets of cells: equal for equal places, whichever object holds them. */
export const placeKey = ({ page, row, column }: Place): string => `${page}.${row}.${column}`;

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

/** A page's title as formulas write it: quoted unless it is a plain word. */
export const pageReference = (title: string): string =>
  /^[A-Za-z_][A-Za-z0-9_]*$/.test(title) ? title : `'${title.replaceAll("'", "''")}'`;

/** "Draft!B3". */
export function fullAddress(book: Book, { page, row, column }: Place): string {
  return `${pageReference(book.pages[page]!.title)}!${cellAddress(row, column)}`;
}

const FULL = /^(?:'((?:[^']|'')+)'|([^'!]+))!\$?([A-Za-z]{1,3})\$?(\d{1,6})$/;

/** Where "Draft!B3" is in this book, or null. */
export function findPlace(book: Book, address: string): Place | null {
  const found = FULL.exec(address.trim());
  if (!found) return null;
  const title = (found[1]?.replaceAll("''", "'") ?? found[2]!).toLowerCase();
  const page = book.pages.findIndex((one) => one.title.toLowerCase() === title);
  const row = Number(found[4]) - 1;
  return page < 0 || row < 0 ? null : { page, row, column: columnNumber(found[3]!) };
}

/** Where a named cell, "Draft!B3", or "B3" on the page given, is; null when there is no such cell. */
export function lookUp(book: Book, text: string, page = 0): Place | null {
  const named = nameInBook(book, text.trim());
  if (named !== undefined) return findPlace(book, book.names[named]!);
  const onPage = /^\$?[A-Za-z]{1,3}\$?\d{1,6}$/.test(text.trim()) && book.pages[page];
  return onPage ? findPlace(book, `${pageReference(onPage.title)}!${text.trim()}`) : findPlace(book, text);
}

interface NameIndex {
  /** By the name in small letters. */
  readonly spelt: ReadonlyMap<string, string>;
  readonly byAddress: ReadonlyMap<string, string>;
}

/** Names are looked up far more often than they change. */
const remembered = rememberWithObject<Book["names"], NameIndex>();

const indexOf = (names: Book["names"]): NameIndex =>
  remembered(names, () => {
    const entries = Object.entries(names);
    return {
      spelt: new Map(entries.map(([name]) => [name.toLowerCase(), name])),
      // The first name of a cell is its name.
      byAddress: new Map(entries.map(([name, address]) => [address, name] as const).reverse()),
    };
  });

/** The name as the book spells it, whatever the case typed. */
export const nameInBook = (book: Book, text: string): string | undefined =>
  indexOf(book.names).spelt.get(text.toLowerCase());

/** The note of a cell; "" when it has none. */
export const noteAt = (book: Book, { page, row, column }: Place): string =>
  book.pages[page]?.notes[cellAddress(row, column)] ?? "";

/** The name of the cell at an address, if it has one. */
export const nameOf = (book: Book, place: Place): string | undefined =>
  book.pages[place.page] && indexOf(book.names).byAddress.get(fullAddress(book, place));

/** Why a text can't be a cell's name, or null when it can. */
export function nameFault(name: string): string | null {
  if (!/^[A-Za-zÀ-ÖØ-öø-ʯ_][A-Za-zÀ-ÖØ-öø-ʯ0-9_]*$/.test(name)) {
    return `a name has letters, digits and _ only and begins with a letter, unlike "${name.slice(0, 40)}"`;
  }
  const figures = /^([A-Za-z]+)(\d+)$/.exec(name);
  if (figures)
    return `"${name}" reads like a cell's address; write it otherwise, such as ${figures[1]}_${figures[2]}`;
  if (/^(true|false|r\d*c\d*|__proto__|constructor|prototype)$/i.test(name))
    return `"${name}" has a meaning of its own here; choose another`;
  return name.length > 60 ? `a name has at most 60 letters, not ${name.length}` : null;
}
