/**
 * Which formulas refer to a cell. What each formula refers to is kept while its row, the names, the pages and the headings
 * of its lists stay as they are.
 */
import { rememberWithObject } from "../../functions/memo.ts";
import { type Place, placeKey } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import type { Book, Page } from "../book/shape.ts";
import { workedBook } from "./fitted-cells.ts";
import { type Area, areasOf, isIn, isSingle } from "./references.ts";
import { namesTogether } from "./uses.ts";

/** A formula and the areas that it refers to. */
export interface Referring {
  readonly place: Place;
  readonly typed: string;
  readonly areas: readonly Area[];
}

interface Known {
  readonly names: readonly unknown[];
  readonly titles: string;
  readonly page: number;
  readonly row: number;
  readonly formulas: readonly Referring[];
  readonly headings: readonly Headings[];
}

/** Where the headings of a list may stand: which columns a formula reads of the list, they say. */
interface Headings {
  readonly page: number;
  readonly row: number;
  readonly typed: readonly string[] | undefined;
  readonly columns: Page["columns"] | undefined;
}

const headingsAt = (book: Book, page: number, row: number): Headings => ({
  page,
  row,
  typed: book.pages[page]?.rows[row],
  columns: book.pages[page]?.columns,
});

const isSameHeadings = (book: Book, { page, row, typed, columns }: Headings): boolean =>
  book.pages[page]?.rows[row] === typed && book.pages[page]?.columns === columns;

const rows = rememberWithObject<readonly string[], { known: Known | null }>();

/** Every formula of the book with the areas that it refers to, in the order of the book. */
export function* referring(book: Book): Generator<Referring> {
  for (const formulas of referringRows(book)) yield* formulas;
}

/** The same, row by row. */
export function* referringRows(book: Book): Generator<readonly Referring[]> {
  const names = namesTogether(book);
  const titles = book.pages.map(({ title }) => title).join("\n");
  for (const [page, { rows: typedRows }] of book.pages.entries()) {
    for (const [row, typedRow] of typedRows.entries()) {
      const kept = rows(typedRow, () => ({ known: null }));
      let of = kept.known;
      if (
        of?.names !== names ||
        of.titles !== titles ||
        of.page !== page ||
        of.row !== row ||
        !of.headings.every((one) => isSameHeadings(book, one))
      ) {
        const headings: Headings[] = [];
        const areas = (typed: string) =>
          areasOf(book, formulaTree(typed), page, undefined, (list) =>
            headings.push(headingsAt(book, list.page, list.top)),
          );
        const formulas = typedRow.flatMap((typed, column) =>
          isFormula(typed) ? [{ place: { page, row, column }, typed, areas: areas(typed) }] : [],
        );
        of = { names, titles, page, row, formulas, headings };
        kept.known = of;
      }
      yield of.formulas;
    }
  }
}

/** The cells whose formulas refer to a cell, in the order of the book. */
export function dependents(book: Book, place: Place): Place[] {
  const found: Place[] = [];
  for (const formula of referring(workedBook(book)))
    if (formula.areas.some((area) => isIn(area, place))) found.push(formula.place);
  return found;
}

/** The formulas of a book by the cells that they refer to. */
export class Users {
  readonly #rows: readonly (readonly Referring[])[];
  #byCell: ReadonlyMap<string, readonly Referring[]> | null = null;
  #bySeveral: readonly { readonly area: Area; readonly formula: Referring }[] = [];

  constructor(book: Book) {
    this.#rows = [...referringRows(book)].filter((row) => row.length > 0);
  }

  /** Whether both have the same formulas in the same cells, which refer to the same areas. */
  isLike(other: Users): boolean {
    const rows = other.#rows;
    return this.#rows.length === rows.length && this.#rows.every((row, i) => areAlike(row, rows[i]!));
  }

  /** The formulas that refer to a cell, each once. */
  of(place: Place): readonly Referring[] {
    this.#byCell ??= this.#sorted();
    const found = new Set(this.#byCell.get(placeKey(place)));
    for (const { area, formula } of this.#bySeveral) if (isIn(area, place)) found.add(formula);
    return [...found];
  }

  #sorted(): ReadonlyMap<string, readonly Referring[]> {
    const byCell = new Map<string, Referring[]>();
    const several: { area: Area; formula: Referring }[] = [];
    for (const formula of this.#rows.flat())
      for (const area of formula.areas) {
        if (!isSingle(area)) {
          several.push({ area, formula });
          continue;
        }
        const key = placeKey({ page: area.page, row: area.top, column: area.left });
        const known = byCell.get(key);
        if (known) known.push(formula);
        else byCell.set(key, [formula]);
      }
    this.#bySeveral = several;
    return byCell;
  }
}

const areAlike = (row: readonly Referring[], other: readonly Referring[]): boolean =>
  row === other ||
  (row.length === other.length &&
    row.every(({ place, typed, areas }, i) => {
      const one = other[i]!;
      return (
        typed === one.typed &&
        placeKey(place) === placeKey(one.place) &&
        areas.length === one.areas.length &&
        areas.every((area, at) => isSameArea(area, one.areas[at]!))
      );
    }));

const isSameArea = (a: Area, b: Area): boolean =>
  a.page === b.page && a.top === b.top && a.left === b.left && a.bottom === b.bottom && a.right === b.right;
