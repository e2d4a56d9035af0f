/** The typed figures of a book that may be below zero; `amounts-below-zero.ts` says which of them a formula takes for amounts. */
import { rememberWithObject } from "../../functions/memo.ts";
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { Area } from "./references.ts";

const BELOW = /^\s*[-−]\s*[\d.,½¼¾⅛⅜⅝⅞]*[1-9½¼¾⅛⅜⅝⅞]/;

/** Whether a text may be a number below zero. */
export const isBelowZero = (typed: string): boolean => BELOW.test(typed);

const NO_COLUMNS: readonly number[] = [];
const rowsKnown = rememberWithObject<readonly string[], readonly number[]>();

/** The columns of a row that hold such texts. */
const columnsBelow = (row: readonly string[]): readonly number[] =>
  rowsKnown(row, () => {
    const columns = [...row.keys()].filter((column) => isBelowZero(row[column]!));
    return columns.length > 0 ? columns : NO_COLUMNS;
  });

/** The cells of a page are listed only for areas of more rows than this. */
const FEW_ROWS = 20;

/** The cells of a book that may hold a number below zero; most books have few. */
export class CellsBelowZero {
  readonly #book: Book;
  /** By page. */
  readonly #found = new Map<number, readonly Place[]>();

  constructor(book: Book) {
    this.#book = book;
  }

  /** Whether one of them stands in an area. */
  isIn({ page, top, left, bottom, right }: Area): boolean {
    if (bottom - top < FEW_ROWS) {
      const rows = this.#book.pages[page]?.rows.slice(top, bottom + 1) ?? [];
      return rows.some((row) => columnsBelow(row).some((column) => column >= left && column <= right));
    }
    return this.#on(page).some(
      ({ row, column }) => row >= top && row <= bottom && column >= left && column <= right,
    );
  }

  #on(page: number): readonly Place[] {
    let found = this.#found.get(page);
    if (!found) {
      const rows = this.#book.pages[page]?.rows ?? [];
      found = rows.flatMap((typed, row) => columnsBelow(typed).map((column) => ({ page, row, column })));
      this.#found.set(page, found);
    }
    return found;
  }
}
