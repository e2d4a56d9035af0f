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

/** What the formulas of a row refer to, kept while nothing that it rests on has changed. */
function knownOf(book: Book, names: Known["names"], titles: string, page: number, row: number): Known {
  const typedRow = book.pages[page]!.rows[row]!;
  const kept = rows(typedRow, () => ({ known: null }));
  const of = kept.known;
  if (
    of?.names === names &&
    of.titles === titles &&
    of.page === page &&
    of.row === row &&
    of.headings.every((one) => isSameHeadings(book, one))
  )
    return of;
  const headings: Headings[] = [];
  const areas = (typed: string) =>
    areasOf(book, formulaTree(typed), page, undefined, (list) =>
      headings.push(headingsAt(book, list.page, list.top)),
    );
  const formulas = typedRow.flatMap((typed, column) =>
    isFormula(typed) ? [{ place: { page, row, column }, typed, areas: areas(typed) }] : [],
  );
  kept.known = { names, titles, page, row, formulas, headings };
  return kept.known;
}

/** Some rows one below the other. */
interface Block {
  readonly known: readonly Known[];
  /** One area a page, around everything on that page that the formulas of these rows refer to. */
  readonly reach: readonly Area[];
  readonly headings: readonly Headings[];
}

/** Rows of a block: few enough to look through, and few blocks in a long book. */
const IN_BLOCK = 64;

interface Blocks {
  readonly names: Known["names"];
  readonly titles: string;
  readonly pages: readonly { readonly rows: Page["rows"]; readonly blocks: readonly Block[] }[];
}

/** The blocks of the book that was looked at last: those without a changed row serve the next book, too. */
let latest: Blocks = { names: [], titles: "", pages: [] };

function blocksOf(book: Book): Block[] {
  const names = namesTogether(book);
  const titles = book.pages.map(({ title }) => title).join("\n");
  const before = latest.names === names && latest.titles === titles ? latest.pages : [];
  const pages = book.pages.map(({ rows: typedRows }, page) => {
    const old = before[page];
    const blocks = Array.from({ length: Math.ceil(typedRows.length / IN_BLOCK) }, (_, at): Block => {
      const from = at * IN_BLOCK;
      const to = Math.min(from + IN_BLOCK, typedRows.length);
      const kept = old?.blocks[at];
      const isKept =
        kept?.known.length === to - from &&
        (old!.rows === typedRows || span(from, to).every((row) => old!.rows[row] === typedRows[row])) &&
        kept.headings.every((one) => isSameHeadings(book, one));
      return isKept ? kept : blockOf(span(from, to).map((row) => knownOf(book, names, titles, page, row)));
    });
    return { rows: typedRows, blocks };
  });
  latest = { names, titles, pages };
  return pages.flatMap(({ blocks }) => blocks);
}

const span = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);

function blockOf(known: readonly Known[]): Block {
  const reach = new Map<number, Area>();
  for (const area of known.flatMap(({ formulas }) => formulas.flatMap(({ areas }) => areas))) {
    const around = reach.get(area.page) ?? area;
    reach.set(area.page, {
      page: area.page,
      top: Math.min(around.top, area.top),
      left: Math.min(around.left, area.left),
      bottom: Math.max(around.bottom, area.bottom),
      right: Math.max(around.right, area.right),
    });
  }
  return { known, reach: [...reach.values()], headings: known.flatMap(({ headings }) => headings) };
}

/** Every formula of the book with the areas that it refers to, row by row in the order of the book. */
export function* referringRows(book: Book): Generator<readonly Referring[]> {
  for (const { known } of blocksOf(book)) for (const { formulas } of known) yield formulas;
}

/** The cells whose formulas refer to a cell, in the order of the book. */
export function dependents(book: Book, place: Place): Place[] {
  const found: Place[] = [];
  const has = (area: Area) => isIn(area, place);
  for (const { reach, known } of blocksOf(workedBook(book)))
    if (reach.some(has))
      for (const { formulas } of known)
        for (const formula of formulas) if (formula.areas.some(has)) found.push(formula.place);
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
