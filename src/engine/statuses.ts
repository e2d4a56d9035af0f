/**
 * What every cell of a book is to a formula that needs a number. Rows that an edit leaves alone
 * are the same objects in the next book, so what was found out about them is kept.
 */
import { rememberWithObject } from "../../functions/memo.ts";
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import type { Book, Page } from "../book/shape.ts";
import { understand } from "./content.ts";
import type { Area } from "./references.ts";

/**
 * "none": a dash, which says that there is no value; "kept": a number kept as a text because its
 * column holds text; "unclear": a figure with two readings. A formula counts as a figure.
 */
export type Status = "blank" | "figure" | "none" | "text" | "kept" | "unclear";

/** A dash in a list, which says that there is no value. */
const NONE = /^[-–—−]$/;

interface KnownRow {
  readonly columns: Page["columns"];
  readonly unit: Book["unit"];
  readonly decimal: Book["decimal"];
  readonly cells: readonly Status[];
}

const rowsKnown = rememberWithObject<readonly string[], { known: KnownRow | null }>();

/** The statuses of the typed cells of one row; beyond them all is blank. */
export function statusesOfRow(book: Book, page: Page, row: readonly string[]): readonly Status[] {
  const { unit, decimal } = book;
  const kept = rowsKnown(row, () => ({ known: null }));
  const old = kept.known;
  if (old?.columns === page.columns && old.unit === unit && old.decimal === decimal) return old.cells;
  const cells = row.map((typed, column) => statusOf(book, typed, page.columns[column]?.kind ?? "any"));
  kept.known = { columns: page.columns, unit, decimal, cells };
  return cells;
}

function statusOf(book: Book, typed: string, kind: Page["columns"][number]["kind"]): Status {
  if (isFormula(typed)) return "figure";
  const content = understand(typed, kind, book.unit, book.decimal);
  if (content.is === "blank") return "blank";
  if (content.is !== "text") return "figure";
  if (content.unclear) return "unclear";
  if (NONE.test(typed.trim())) return "none";
  if (kind !== "text") return "text";
  const free = understand(typed, "any", book.unit, book.decimal);
  if (free.is === "text") return free.unclear ? "unclear" : "text";
  return free.is === "flag" ? "text" : "kept";
}

/** Columns are counted only for areas of more rows than this. */
const FEW_ROWS = 20;

/** The statuses of one book. */
export class Statuses {
  readonly #book: Book;
  /** By page and column: how many cells without a number stand above each row. */
  readonly #others = new Map<string, Uint32Array>();

  constructor(book: Book) {
    this.#book = book;
  }

  of({ page, row, column }: Place): Status {
    const on = this.#book.pages[page];
    const typed = on?.rows[row];
    return on && typed ? (statusesOfRow(this.#book, on, typed)[column] ?? "blank") : "blank";
  }

  /** Whether every cell of an area, down to the last row of its page, is a figure. */
  areFigures({ page, top, left, bottom, right }: Area): boolean {
    const rows = this.#book.pages[page]?.rows.length ?? 0;
    if (top >= rows || right - left > 50) return false;
    if (bottom - top < FEW_ROWS) {
      for (let row = top; row <= Math.min(bottom, rows - 1); row += 1)
        for (let column = left; column <= right; column += 1)
          if (this.of({ page, row, column }) !== "figure") return false;
      return true;
    }
    for (let column = left; column <= right; column += 1) {
      const others = this.#othersOf(page, column);
      if (others[Math.min(bottom + 1, rows)]! > others[top]!) return false;
    }
    return true;
  }

  #othersOf(page: number, column: number): Uint32Array {
    const key = `${page}.${column}`;
    let others = this.#others.get(key);
    if (!others) {
      const on = this.#book.pages[page]!;
      others = new Uint32Array(on.rows.length + 1);
      for (let row = 0; row < on.rows.length; row += 1) {
        const status = statusesOfRow(this.#book, on, on.rows[row]!)[column] ?? "blank";
        others[row + 1] = others[row]! + (status === "figure" ? 0 : 1);
      }
      this.#others.set(key, others);
    }
    return others;
  }

  /** The cells of a row in which a figure has two readings; those of columns of text left out. */
  unclear(page: number, row: number): readonly Place[] {
    const on = this.#book.pages[page]!;
    const cells = statusesOfRow(this.#book, on, on.rows[row]!);
    if (!cells.includes("unclear")) return [];
    return cells.flatMap((status, column) =>
      status === "unclear" && on.columns[column]?.kind !== "text" ? [{ page, row, column }] : [],
    );
  }
}
