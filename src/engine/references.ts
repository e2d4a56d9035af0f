/**
 * Which cells a formula refers to: the one answer to that question, for kinds, precedents,
 * dependents, circles and what-if.
 *
 * A formula refers to areas: a single cell, a range, what a name stands for, whole columns, whole rows, and
 * the cell or block that OFFSET reaches when its shifts are plain whole numbers (the engine
 * accepts no others). An area is known by its corners, so a blank cell inside it belongs to it too.
 */
import { cellAddress, columnNumber, type Place, placeKey } from "../book/address.ts";
import { type Call, formulaTree, isFormula, type Tree } from "../book/formula.ts";
import { lookUp, nameMeant } from "../book/names.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS, typedAt } from "../book/shape.ts";
import { columnsRead, readsListAt } from "./columns-read.ts";
import { workedBook } from "./fitted-cells.ts";

/** A block of cells on one page; all corners count from 0 and are included. */
export interface Area {
  readonly page: number;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** A part of a formula that refers to cells by itself. */
export type Reference = Extract<Tree, { is: "name" | "cell" | "range" | "columns" | "rows" }>;

const areaAt = ({ page, row, column }: Place): Area => ({
  page,
  top: row,
  left: column,
  bottom: row,
  right: column,
});

const between = (a: Place, b: Place): Area => ({
  page: a.page,
  top: Math.min(a.row, b.row),
  left: Math.min(a.column, b.column),
  bottom: Math.max(a.row, b.row),
  right: Math.max(a.column, b.column),
});

/** The area that a part of a formula on `page` refers to; null when the part refers to no cell. */
export function areaOf(book: Book, tree: Tree, page: number): Area | null {
  switch (tree.is) {
    case "name":
      return nameMeant(book, tree.text, page)?.block ?? null;
    case "cell": {
      const place = lookUp(book, tree.text, page);
      return place && areaAt(place);
    }
    case "range": {
      const first = cornerAt(book, tree.from, page);
      const last = first && cornerAt(book, tree.to, first.page);
      return first && last && between(first, last);
    }
    case "columns":
    case "rows":
      return bandOf(book, tree.text, page);
    case "call":
      return tree.name === "OFFSET" ? offsetArea(book, tree, page) : null;
    default:
      return null;
  }
}

/** One end of a range: an address, a name, or an OFFSET that reaches a single cell. */
function cornerAt(book: Book, tree: Tree, page: number): Place | null {
  const area = areaOf(book, tree, page);
  const single = area && area.top === area.bottom && area.left === area.right;
  return single ? { page: area.page, row: area.top, column: area.left } : null;
}

/** Whole columns ("Draft!A:C") or whole rows ("2:3"); null for a row 0 or a page that is not there. */
function bandOf(book: Book, text: string, page: number): Area | null {
  const [, title, from = "", to = ""] = /^(.*!)?\$?(\w+):\$?(\w+)$/.exec(text) ?? [];
  const on = title ? lookUp(book, `${title}A1`)?.page : page;
  if (on === undefined) return null;
  const rows = /^\d/.test(from);
  const [a, b] = rows ? [Number(from) - 1, Number(to) - 1] : [columnNumber(from), columnNumber(to)];
  if (Math.min(a, b) < 0) return null;
  return rows
    ? { page: on, top: Math.min(a, b), left: 0, bottom: Math.max(a, b), right: MOST_COLUMNS - 1 }
    : { page: on, top: 0, left: Math.min(a, b), bottom: MOST_ROWS - 1, right: Math.max(a, b) };
}

/** What OFFSET(reference; rows; columns; [height]; [width]) reaches; null when the engine would refuse it. */
function offsetArea(book: Book, { args }: Call, page: number): Area | null {
  const [reference, rows, columns, height, width] = args;
  const from = reference?.is === "cell" ? lookUp(book, reference.text, page) : null;
  const down = wholeNumber(rows);
  const across = wholeNumber(columns);
  const tall = height ? wholeNumber(height) : 1;
  const wide = width ? wholeNumber(width) : 1;
  if (!from || down === null || across === null || !tall || !wide) return null;
  const top = from.row + down;
  const left = from.column + across;
  if (top < 0 || left < 0 || tall < 1 || wide < 1) return null;
  return { page: from.page, top, left, bottom: top + tall - 1, right: left + wide - 1 };
}

/** A whole number as it may be written in OFFSET, with at most one sign before it. */
function wholeNumber(tree: Tree | null | undefined): number | null {
  if (tree?.is === "number") return Number.isInteger(Number(tree.text)) ? Number(tree.text) : null;
  if (tree?.is !== "sign" || tree.args.length !== 1 || tree.args[0]?.is !== "number") return null;
  const value = wholeNumber(tree.args[0]);
  return value === null ? null : tree.sign === "-" ? -value : value;
}

/** The positions of the arguments that the answer of a call needs; null when all of them are. */
export type NeededIn = (call: Call) => ReadonlySet<number> | null;

/**
 * The areas that a tree refers to, in the order of the formula; with `needed` only those that its answer needs. Of a
 * list that a function reads by its headings these are the columns that it reads; `onList` is called with such a list.
 */
export function areasOf(
  book: Book,
  tree: Tree,
  page: number,
  needed: NeededIn = () => null,
  onList: (list: Area) => void = () => {},
): Area[] {
  const own = areaOf(book, tree, page);
  if (own) return [own];
  if (tree.is === "call") {
    const used = needed(tree);
    return tree.args.flatMap((arg, at) => {
      if (!arg || (used && !used.has(at))) return [];
      const list = readsListAt(tree.name, at) ? areaOf(book, arg, page) : null;
      if (list) onList(list);
      return (list && columnsRead(book, tree, at, list)) ?? areasOf(book, arg, page, needed, onList);
    });
  }
  const parts: readonly (Tree | null)[] =
    tree.is === "sign"
      ? tree.args
      : tree.is === "list"
        ? tree.items
        : tree.is === "range"
          ? [tree.from, tree.to]
          : [];
  return parts.flatMap((part) => (part ? areasOf(book, part, page, needed, onList) : []));
}

/** Whether a cell lies in an area, blank or not. */
export const isIn = (area: Area, { page, row, column }: Place): boolean =>
  page === area.page && row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;

/** The cells of an area in which something is typed, row by row, at most `most` of them. */
export function typedIn(book: Book, area: Area, most = Number.POSITIVE_INFINITY): Place[] {
  const places: Place[] = [];
  const rows = book.pages[area.page]?.rows ?? [];
  for (let row = area.top; row <= Math.min(area.bottom, rows.length - 1); row += 1) {
    for (let column = area.left; column <= Math.min(area.right, rows[row]!.length - 1); column += 1) {
      if (!rows[row]![column]) continue;
      if (places.length === most) return places;
      places.push({ page: area.page, row, column });
    }
  }
  return places;
}

/** Whether a part of a formula on `page` is a block of two columns or more. */
export const isWide =
  (book: Book, page: number) =>
  (tree: Tree): boolean => {
    const area = areaOf(book, tree, page);
    return area !== null && area.right > area.left;
  };

/** Whether an area is whole columns or whole rows. */
export const isBand = ({ top, left, bottom, right }: Area): boolean =>
  (top === 0 && bottom === MOST_ROWS - 1) || (left === 0 && right === MOST_COLUMNS - 1);

export const isSingle = ({ top, left, bottom, right }: Area): boolean => top === bottom && left === right;

/** The cells of an area: a single cell in any case, of a larger area those in which something is typed. */
export const cellsIn = (book: Book, area: Area, most?: number): Place[] =>
  isSingle(area) ? [{ page: area.page, row: area.top, column: area.left }] : typedIn(book, area, most);

/** The cells that a formula on `page` refers to, in the order of the formula, each once; `of` chooses among the cells of an area. */
export function precedents(
  book: Book,
  formula: string,
  page: number,
  of: (area: Area) => readonly Place[] | null = () => null,
): Place[] {
  const found = new Map<string, Place>();
  for (const area of areasOf(book, formulaTree(formula), page))
    for (const place of of(area) ?? cellsIn(book, area)) found.set(placeKey(place), place);
  return [...found.values()];
}

/** Signs that no formula has that only repeats a cell, unless in the quoted title of a page: of most formulas no tree need be made. */
const MORE_THAN_A_CELL = /=[^']*(?:[:+*/^&<>=%{"]|[A-Za-z0-9_.]\()/;

/** The cell that a cell with this entry on `page` only repeats, such as =B4; null for every other entry. */
export function repeatedBy(book: Book, typed: string, page: number): Place | null {
  if (!isFormula(typed) || MORE_THAN_A_CELL.test(typed)) return null;
  const tree = formulaTree(typed);
  const area = tree.is === "cell" || tree.is === "name" ? areaOf(book, tree, page) : null;
  return area && { page: area.page, row: area.top, column: area.left };
}

/** The cell where a cell that only repeats another gets its value from; else the cell itself. */
export function sourceOf(book: Book, place: Place): Place {
  let from = place;
  for (let i = 0; i < 5; i += 1) {
    const repeated = repeatedBy(book, typedAt(book, from.page, from.row, from.column), from.page);
    if (!repeated) return from;
    from = repeated;
  }
  return place;
}

/** Everything that some cells rest on, step by step down to what is typed, themselves included. */
export class Upstream {
  readonly #cells = new Map<string, Place>();
  /** The areas referred to on the way that are more than one cell: their blank cells belong here too. */
  readonly #areas = new Map<string, Area>();

  /** With `needed`, branches that a formula's answer does not need are left out; it is given the formula and its page. */
  constructor(
    book: Book,
    tops: readonly Place[],
    needed: (formula: string, page: number) => NeededIn = () => () => null,
  ) {
    const worked = workedBook(book);
    const waiting = [...tops];
    for (let place = waiting.pop(); place; place = waiting.pop()) {
      if (this.#cells.has(placeKey(place))) continue;
      this.#cells.set(placeKey(place), place);
      const typed = typedAt(worked, place.page, place.row, place.column);
      if (!isFormula(typed)) continue;
      for (const area of areasOf(book, formulaTree(typed), place.page, needed(typed, place.page))) {
        if (!isSingle(area)) {
          const key = `${area.page}.${area.top}.${area.left}.${area.bottom}.${area.right}`;
          if (this.#areas.has(key)) continue;
          this.#areas.set(key, area);
        }
        for (const cell of cellsIn(book, area)) waiting.push(cell);
      }
    }
  }

  /** Whether the cells rest on this cell, even if it is blank. */
  has(place: Place): boolean {
    return this.#cells.has(placeKey(place)) || [...this.#areas.values()].some((area) => isIn(area, place));
  }

  /** The cells that hold something or are referred to one by one, in no particular order. */
  get places(): Place[] {
    return [...this.#cells.values()];
  }
}

/** "B2:B9", or "B2" for one cell. */
export const rangeText = ({ top, left, bottom, right }: Area): string =>
  top === bottom && left === right
    ? cellAddress(top, left)
    : `${cellAddress(top, left)}:${cellAddress(bottom, right)}`;
