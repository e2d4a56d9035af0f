/** Books that are typed cell by cell, on the pages of a blank book. */
import { type Block, findPlace, type Place } from "../../../src/book/address.ts";
import * as edit from "../../../src/book/edit.ts";
import { type Book, blankBook, type Column, typedAt } from "../../../src/book/shape.ts";

export const any: Column = { heading: "", kind: "any", width: 100 };
/** The page on which addresses without a title are. */
export const DRAFT = 1;
const blank = blankBook("Withy Green", "in", "1/8");
export const base: Book = {
  ...blank,
  pages: blank.pages.map((page) => ({ ...page, columns: Array(6).fill(any) })),
};

export const place = (address: string): Place =>
  findPlace(base, address.includes("!") ? address : `Draft!${address}`)!;
export function bookOf(cells: Readonly<Record<string, string>>, more: Partial<Book> = {}): Book {
  const typings = Object.entries(cells).map(([address, typed]) => ({ ...place(address), typed }));
  return { ...edit.type(base, typings), ...more };
}
export const typed = (book: Book, address: string): string => {
  const { page, row, column } = place(address);
  return typedAt(book, page, row, column);
};
export const block = (from: string, to: string): Block => {
  const [a, b] = [place(from), place(to)];
  return { page: a.page, top: a.row, left: a.column, bottom: b.row, right: b.column };
};
