/**
 * The rows in which a formula may need a figure from a cell, and those with cells that only repeat another cell. They
 * are kept from one state of a book to the next: an edit of a large book does not ask every row.
 */
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { Pattern, UsesByRow } from "./uses.ts";

/** A row of a page. */
export type Row = Pick<Place, "page" | "row">;

/** The first and the last row in which formulas of a pattern stand or stood. */
interface Span {
  from: number;
  to: number;
}

interface OfPage {
  readonly patterns: Map<Pattern, Span>;
  readonly repeating: Set<number>;
}

export class Reach {
  readonly #pages: readonly OfPage[];
  /** With more patterns everything is read anew: those of formulas that are gone stay. */
  readonly #most: number;

  constructor(book: Book, uses: UsesByRow) {
    this.#pages = book.pages.map(({ rows }, page) => {
      const of: OfPage = { patterns: new Map(), repeating: new Set() };
      for (let row = 0; row < rows.length; row += 1) read(of, uses, page, row);
      return of;
    });
    this.#most = this.#count * 2 + 1000;
  }

  get #count(): number {
    return this.#pages.reduce((sum, { patterns }) => sum + patterns.size, 0);
  }

  /** Reads these rows again; false when everything is to be read anew. */
  follow(rows: readonly Row[], uses: UsesByRow): boolean {
    for (const { page, row } of rows) read(this.#pages[page]!, uses, page, row);
    return this.#count <= this.#most;
  }

  /** The rows with cells that only repeat another cell, and perhaps some that had such cells. */
  repeating(): Row[] {
    return this.#pages.flatMap(({ repeating }, page) => [...repeating].map((row) => ({ page, row })));
  }

  /** The rows in which a formula needs a figure from one of the cells, in the order of the book. */
  rows(cells: readonly Place[], uses: UsesByRow): Row[] {
    return this.#pages.flatMap(({ patterns }, page) => {
      const found = new Set<number>();
      for (const [pattern, span] of patterns)
        for (const cell of cells) {
          const [from, to] = within(pattern, span, cell);
          for (let row = from; row <= to; row += 1) found.add(row);
        }
      return [...found]
        .sort((a, b) => a - b)
        .filter((row) => uses.reach(page, row, cells))
        .map((row) => ({ page, row }));
    });
  }
}

/** Notes what stands in a row. */
function read({ patterns, repeating }: OfPage, uses: UsesByRow, page: number, row: number): void {
  const here = uses.patterns(page, row);
  for (let column = 0; column < here.length; column += 1) {
    const pattern = here[column];
    if (!pattern) continue;
    const span = patterns.get(pattern);
    if (!span) patterns.set(pattern, { from: row, to: row });
    else if (row < span.from) span.from = row;
    else if (row > span.to) span.to = row;
  }
  if (uses.repeats(page, row).length > 0) repeating.add(row);
}

/** The rows from and to which a formula of a pattern, standing within a span, may need a figure from a cell; an empty run when none does. */
function within({ home, reach }: Pattern, { from, to }: Span, cell: Place): readonly [number, number] {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { page, top, bottom, stays } of reach) {
    if (page !== cell.page) continue;
    if (stays.rows) {
      if (top <= cell.row && cell.row <= bottom) return [from, to];
      continue;
    }
    first = Math.min(first, cell.row - bottom + home.row);
    last = Math.max(last, cell.row - top + home.row);
  }
  return [Math.max(first, from), Math.min(last, to)];
}
