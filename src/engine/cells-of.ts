/** The cells that a part of a formula means. */
import { columnNumber, lookUp, type Place } from "../book/address.ts";
import type { Tree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";

/** The most cells of one range that are looked at one by one. */
const MOST = 2000;

/** The cells that a name, an address or a range on `page` means; of ranges those in which something stands. */
export function cellsOf(book: Book, tree: Tree, page: number, most = MOST): Place[] {
  if (tree.is === "name" || tree.is === "cell") {
    const place = lookUp(book, tree.text, page);
    return place ? [place] : [];
  }
  if (tree.is === "columns" || tree.is === "rows") return cellsOfBand(book, tree.text, page, most);
  if (tree.is !== "range" || tree.from.is !== "cell" || tree.to.is !== "cell") return [];
  const first = lookUp(book, tree.from.text, page);
  const last = first && lookUp(book, tree.to.text, first.page);
  return first && last ? cellsBetween(book, first, last, most) : [];
}

/** Whole columns ("Draft!A:C") or whole rows ("2:3"). */
function cellsOfBand(book: Book, text: string, page: number, most: number): Place[] {
  const [, title, from = "", to = ""] = /^(.*!)?\$?(\w+):\$?(\w+)$/.exec(text) ?? [];
  const on = title ? lookUp(book, `${title}A1`)?.page : page;
  if (on === undefined) return [];
  const rows = book.pages[on]?.rows.length ?? 0;
  const wide = book.pages[on]?.columns.length ?? 0;
  return /\d/.test(from)
    ? cellsBetween(
        book,
        { page: on, row: Number(from) - 1, column: 0 },
        { page: on, row: Number(to) - 1, column: wide - 1 },
        most,
      )
    : cellsBetween(
        book,
        { page: on, row: 0, column: columnNumber(from) },
        { page: on, row: rows - 1, column: columnNumber(to) },
        most,
      );
}

/** The cells with something typed in them between two corners, row by row. */
function cellsBetween(book: Book, a: Place, b: Place, most: number): Place[] {
  const places: Place[] = [];
  const rows = book.pages[a.page]?.rows ?? [];
  const [left, right] = [Math.min(a.column, b.column), Math.max(a.column, b.column)];
  const bottom = Math.min(Math.max(a.row, b.row), rows.length - 1);
  for (let row = Math.min(a.row, b.row); row <= bottom; row += 1) {
    for (let column = left; column <= Math.min(right, rows[row]!.length - 1); column += 1) {
      if (!rows[row]![column]) continue;
      if (places.length === most) return places;
      places.push({ page: a.page, row, column });
    }
  }
  return places;
}
