/**
 * A copy of a book to ask questions of: an engine of its own over the same book, with only the
 * formulas that the watched cells rest on. The open book is never touched.
 */
import { columnNumber, lookUp, type Place } from "../book/address.ts";
import { type } from "../book/edit.ts";
import { isFormula, type Tree } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { clean, type Dial, labelOf } from "./dial.ts";
import { Engine, type LayDesk } from "./engine.ts";
import { formulaTree } from "./kinds.ts";
import { dayText } from "./show.ts";

/** What a watched cell holds at a setting, or why it holds nothing. */
export type Reading = { readonly value: number | string | boolean | null } | { readonly sentence: string };

export const numberOf = (reading: Reading | undefined): number | null =>
  reading && "value" in reading && typeof reading.value === "number" ? reading.value : null;

const keyOf = ({ page, row, column }: Place): string => `${page}.${row}.${column}`;

/** The cells that these rest on, themselves included. */
export class Cone {
  readonly #cells = new Map<string, Place>();

  constructor(book: Book, tops: readonly Place[]) {
    const waiting = [...tops];
    for (let place = waiting.pop(); place; place = waiting.pop()) {
      if (this.has(place)) continue;
      this.#cells.set(keyOf(place), place);
      const typed = typedAt(book, place.page, place.row, place.column);
      if (isFormula(typed)) collect(book, formulaTree(typed), place.page, waiting);
    }
  }

  has(place: Place): boolean {
    return this.#cells.has(keyOf(place));
  }

  /** In no particular order. */
  get places(): Place[] {
    return [...this.#cells.values()];
  }
}

/** Adds the cells that a tree names; of ranges and whole columns those in which something stands. */
function collect(book: Book, tree: Tree, page: number, out: Place[]): void {
  const each = (list: readonly (Tree | null)[]) => {
    for (const one of list) if (one) collect(book, one, page, out);
  };
  const block = (on: number, top: number, left: number, bottom: number, right: number) => {
    const rows = book.pages[on]?.rows ?? [];
    for (let row = top; row <= Math.min(bottom, rows.length - 1); row += 1) {
      for (let column = left; column <= Math.min(right, rows[row]!.length - 1); column += 1) {
        if (rows[row]![column]) out.push({ page: on, row, column });
      }
    }
  };
  switch (tree.is) {
    case "name":
    case "cell": {
      const place = lookUp(book, tree.text, page);
      if (place) out.push(place);
      return;
    }
    case "range": {
      const from = "text" in tree.from ? lookUp(book, tree.from.text, page) : null;
      const to = from && "text" in tree.to ? lookUp(book, tree.to.text, from.page) : null;
      if (!from || !to) {
        each([tree.from, tree.to]);
        return;
      }
      const [top, bottom] = [Math.min(from.row, to.row), Math.max(from.row, to.row)];
      const [left, right] = [Math.min(from.column, to.column), Math.max(from.column, to.column)];
      block(from.page, top, left, bottom, right);
      return;
    }
    case "columns": {
      const [, title, first, last] = /^(.*!)?\$?([A-Za-z]+):\$?([A-Za-z]+)$/.exec(tree.text) ?? [];
      const on = title ? (lookUp(book, `${title}A1`)?.page ?? page) : page;
      block(on, 0, columnNumber(first ?? "A"), Number.POSITIVE_INFINITY, columnNumber(last ?? "ZZZ"));
      return;
    }
    case "call":
    case "sign":
      each(tree.args);
      return;
    case "list":
      each(tree.items);
  }
}

/** The book with the formulas outside the cone left blank: nothing that the cone holds changes by it. */
function lean(book: Book, cone: Cone): Book {
  const pages = book.pages.map((page, index) => ({
    ...page,
    rows: page.rows.map((row, r) =>
      row.map((typed, column) =>
        isFormula(typed) && !cone.has({ page: index, row: r, column }) ? "" : typed,
      ),
    ),
  }));
  return { ...book, pages };
}

export class Copy {
  readonly book: Book;
  readonly dials: readonly Dial[];
  readonly watched: readonly Place[];
  readonly cone: Cone;
  readonly #lean: Book;
  readonly #engine: Engine;

  constructor(book: Book, desk: LayDesk, dials: readonly Dial[], watched: readonly Place[]) {
    this.book = book;
    this.dials = dials;
    this.watched = watched;
    this.cone = new Cone(book, watched);
    this.#lean = lean(book, this.cone);
    this.#engine = new Engine(this.#lean, desk);
  }

  /** The watched cells with these figures in the dials, in the dials' order. */
  read(figures: readonly number[]): Reading[] {
    const typings = this.dials.map((dial, i) => ({ ...dial.place, typed: this.#typed(dial, figures[i]!) }));
    this.#engine.become(type(this.#lean, typings));
    return this.watched.map((place) => this.#reading(place));
  }

  /** The watched cells as the book stands. */
  now(): Reading[] {
    this.#engine.become(this.#lean);
    return this.watched.map((place) => this.#reading(place));
  }

  #typed(dial: Dial, figure: number): string {
    return dial.kind === "days" && figure > 20_000 ? dayText(figure) : String(clean(figure));
  }

  #reading(place: Place): Reading {
    const value = this.#engine.value(place);
    if (value !== null) return { value };
    const { look } = this.#engine.view(place);
    if (!look) return { value };
    const elsewhere = keyOf(look.from) !== keyOf(place);
    return { sentence: elsewhere ? `${labelOf(this.book, look.from)}: ${look.sentence}` : look.sentence };
  }

  destroy(): void {
    this.#engine.destroy();
  }
}
