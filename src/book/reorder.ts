/**
 * Moving whole rows, columns and pages to another place, and sorting the rows of a block. The cells
 * themselves move: every reference, name, note, setting and trial follows, so that no answer changes
 * but where a range takes in or loses a row.
 */
import { phrase } from "../../functions/phrase.ts";
import { type Block, cellAddress, columnLetters, fullAddress, type Place } from "./address.ts";
import { marksMoved } from "./cell-marks.ts";
import { everywhere } from "./edit.ts";
import { hiddenRows, withHidden } from "./hidden-rows.ts";
import { type Axis, afterMapping, type Span } from "./references.ts";
import { BLANK_COLUMN, type Book, type Page, type Stage, typedAt } from "./shape.ts";

/** Where each of a run of lines (rows or columns) comes to when `count` of them from `at` on are put before line `to`. */
export const movedLine =
  (at: number, count: number, to: number) =>
  (line: number): number => {
    if (line >= at && line < at + count) return to > at ? line + to - at - count : line + to - at;
    if (to > at) return line >= at + count && line < to ? line - count : line;
    return line >= to && line < at ? line + count : line;
  };

/**
 * A range of lines after such a move. All of its lines still side by side are the range; otherwise
 * it spans those that did not move, and with them the lines that were put between them.
 */
export function movedRange(
  low: number,
  high: number,
  at: number,
  count: number,
  to: number,
): readonly [number, number] {
  const line = movedLine(at, count, to);
  const [first, last] = [Math.max(low, at), Math.min(high, at + count - 1)];
  if (first > last || (first === low && last === high)) return [line(low), line(high)];
  const stay = [line(low < first ? low : last + 1), line(high > last ? high : first - 1)] as const;
  const all = [Math.min(stay[0], line(first)), Math.max(stay[1], line(last))] as const;
  return all[1] - all[0] === high - low ? all : stay;
}

const mapSpan =
  (axis: Axis, map: (low: number, high: number) => readonly [number, number]) => (span: Span) => {
    const [low, high] = axis === "row" ? [span.top, span.bottom] : [span.left, span.right];
    if (low === null || high === null) return span;
    const [first, last] = map(low, high);
    return axis === "row" ? { ...span, top: first, bottom: last } : { ...span, left: first, right: last };
  };

function movedLines(book: Book, index: number, axis: Axis, at: number, count: number, to: number): Book {
  const { title } = book.pages[index]!;
  const map = mapSpan(axis, (low, high) => movedRange(low, high, at, count, to));
  const next = everywhere(book, (formula, home) => afterMapping(formula, home, title, map));
  const page = marksMoved(next.pages[index]!, (address) =>
    afterMapping(`=${address}`, title, title, map).slice(1),
  );
  return { ...next, pages: next.pages.with(index, page) };
}

/** A list after a move of its entries; it is made longer where the move reaches beyond its end. */
function reordered<T>(list: readonly T[], at: number, count: number, to: number, blank: T): T[] {
  const reach = Math.max(at + count, to);
  const long = list.length < reach ? [...list, ...Array<T>(reach - list.length).fill(blank)] : [...list];
  const moved = long.splice(at, count);
  long.splice(to > at ? to - count : to, 0, ...moved);
  return long;
}

const staysPut = (at: number, count: number, to: number) => to >= at && to <= at + count;

/** Puts `count` rows from row `at` on before row `to`. Hidden rows stay hidden. */
export function moveRows(book: Book, index: number, at: number, count: number, to: number): Book {
  if (staysPut(at, count, to)) return book;
  const next = movedLines(book, index, "row", at, count, to);
  const page = next.pages[index]!;
  const hidden = [...hiddenRows(page)].map(movedLine(at, count, to));
  const rows = page.rows.length <= Math.min(at, to) ? page.rows : reordered(page.rows, at, count, to, []);
  return { ...next, pages: next.pages.with(index, withHidden({ ...page, rows }, hidden)) };
}

/** Puts `count` columns from column `at` on before column `to`, with their headings, kinds and widths. */
export function moveColumns(book: Book, index: number, at: number, count: number, to: number): Book {
  if (staysPut(at, count, to)) return book;
  const next = movedLines(book, index, "column", at, count, to);
  const page = next.pages[index]!;
  const rows = page.rows.map((row) =>
    row.length <= Math.min(at, to) ? row : reordered(row, at, count, to, ""),
  );
  const columns = reordered(page.columns, at, count, to, BLANK_COLUMN);
  return { ...next, pages: next.pages.with(index, { ...page, columns, rows }) };
}

/** Puts a page before page `to`, under a stage. Formulas name pages by their titles, so no formula changes. */
export function movePage(book: Book, index: number, to: number, stage: Stage): Book {
  const page = book.pages[index]!;
  const moved: Page = page.stage === stage ? page : { ...page, stage };
  const pages = reordered(book.pages, index, 1, to, page).map((one) => (one === page ? moved : one));
  return pages.every((one, i) => one === book.pages[i]) ? book : { ...book, pages };
}

/** What keeps the rows of a block from being sorted, in a sentence. */
export interface SortFault {
  readonly refusal: string;
}

/**
 * The rows of a block in another order: `order[i]` is the row, counted from the top of the block, that
 * comes to stand at i. References from elsewhere follow their row. Refused, with a sentence, where an
 * answer would change or a row would be torn apart: where a formula of the block uses another row of it,
 * where a formula uses a part of its rows, and where a formula and its figures stand in one row of the
 * page of which the block has only a part.
 */
export function sortedRows(book: Book, block: Block, order: readonly number[]): Book | SortFault {
  const { page: index, top, bottom, left, right } = block;
  const { title } = book.pages[index]!;
  for (const row of hiddenRows(book.pages[index]!))
    if (row >= top && row <= bottom)
      return {
        refusal: phrase`row ${row + 1} of this block is hidden; show the hidden rows first, so that what is sorted is seen`,
      };
  if (order.every((row, i) => row === i)) return book;
  const placeOf = new Map(order.map((row, i) => [row + top, i + top]));
  let refusal: string | null = null;
  const faulty = (sentence: string) => {
    refusal ??= sentence;
    return null;
  };
  const isInside = (at: Place | null) =>
    at !== null &&
    at.page === index &&
    at.row >= top &&
    at.row <= bottom &&
    at.column >= left &&
    at.column <= right;
  const next = everywhere(book, (formula, home, at) =>
    afterMapping(formula, home, title, (span) => {
      const { left: first, right: last } = span;
      const [low, high] = [span.top, span.bottom];
      if (low === null || high === null || low > bottom || high < top) return span;
      const inside = isInside(at);
      const sameRow = at?.page === index && low === high && at.row === low;
      const touches = first === null || last === null || (first <= right && last >= left);
      const within = first !== null && last !== null && first >= left && last <= right;
      const where = at ? fullAddress(book, at) : phrase`a name`;
      const what = spanText(span);
      if (low <= top && high >= bottom && !(low === high && inside)) return span;
      if (inside && sameRow)
        return within
          ? { ...span, top: placeOf.get(low)!, bottom: placeOf.get(low)! }
          : faulty(
              phrase`${where} uses ${what}, which stands in its row but outside this block; select a block that holds both, so that the row stays together`,
            );
      if (!inside && !touches) return span;
      if (inside)
        return touches || low === high
          ? faulty(
              phrase`${where} uses ${what}, another row of this block; sorted, it would use a row that is no longer its neighbour. Put the formula's answer below the block, or sort without this column`,
            )
          : span;
      if (sameRow)
        return faulty(
          phrase`${where} uses ${what} of its own row and stands outside this block; select a block that holds both, so that the row stays together`,
        );
      if (!within)
        return faulty(
          phrase`${where} uses ${what}, of which only a part is in this block; select the whole of it`,
        );
      const rows = Array.from({ length: high - low + 1 }, (_, i) => placeOf.get(low + i) ?? low + i);
      const [least, most] = [Math.min(...rows), Math.max(...rows)];
      return most - least === high - low && low >= top && high <= bottom
        ? { ...span, top: least, bottom: most }
        : faulty(
            phrase`${where} uses ${what}, only some of the rows of this block, and sorted they would no longer stand together; make the formula use them all`,
          );
    }),
  );
  if (refusal !== null) return { refusal };
  const page = next.pages[index]!;
  const before = book.pages[index]!;
  const rows = [...page.rows];
  while (rows.length <= bottom) rows.push([]);
  const cells = rows
    .slice(top, bottom + 1)
    .map((row) => Array.from({ length: right - left + 1 }, (_, i) => row[left + i] ?? ""));
  order.forEach((from, i) => {
    const row = [...rows[top + i]!];
    while (row.length < left) row.push("");
    row.splice(left, right - left + 1, ...cells[from]!);
    rows[top + i] = row;
  });
  const marked = marksMoved(page, (address) => {
    const [, letters, figure] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
    const row = Number(figure) - 1;
    const moves = letters !== undefined && placeOf.has(row) && columnsOf(left, right).has(letters);
    return moves ? `${letters}${placeOf.get(row)! + 1}` : address;
  });
  const wide = before.columns;
  return {
    ...next,
    pages: next.pages.with(index, { ...marked, rows, columns: wide === page.columns ? wide : page.columns }),
  };
}

const columnsOf = (left: number, right: number): ReadonlySet<string> =>
  new Set(Array.from({ length: right - left + 1 }, (_, i) => columnLetters(left + i)));

/** "B2", "B2:B5" or "2:5", as a formula would write the cells. */
function spanText({ top, bottom, left, right }: Span): string {
  if (left === null || right === null)
    return top === bottom ? phrase`row ${top! + 1}` : `${top! + 1}:${bottom! + 1}`;
  const first = cellAddress(top!, left);
  return top === bottom && left === right ? first : `${first}:${cellAddress(bottom!, right)}`;
}

/** The value of a cell as the engine gives it; null where it is blank or has no answer. */
export type SortValue = number | string | boolean | null;

const RANK = (value: SortValue): number =>
  value === null || value === "" ? 3 : typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2;

const byWords = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

/**
 * The order in which rows stand once sorted by these values: figures before texts before TRUE and FALSE,
 * blanks and errors last in either direction; equal values keep their order.
 */
export function sortOrder(values: readonly SortValue[], descending: boolean): number[] {
  const way = descending ? -1 : 1;
  return values
    .map((_, i) => i)
    .sort((a, b) => {
      const [x, y] = [values[a]!, values[b]!];
      const [rank, other] = [RANK(x), RANK(y)];
      if (rank === 3 || other === 3) return rank === other ? a - b : rank - other;
      if (rank !== other) return way * (rank - other);
      const compared = typeof x === "string" ? byWords.compare(x, String(y)) : Number(x) - Number(y);
      return way * compared || a - b;
    });
}

/** The block of filled cells around a cell: it ends where a whole row or column beside it is blank. */
export function blockAround(book: Book, { page, row, column }: Place): Block {
  const block = { page, top: row, left: column, bottom: row, right: column };
  const filled = (r: number, c: number) => typedAt(book, page, r, c).trim() !== "";
  const anyIn = (top: number, left: number, bottom: number, right: number) => {
    for (let r = Math.max(top, 0); r <= bottom; r += 1)
      for (let c = Math.max(left, 0); c <= right; c += 1) if (filled(r, c)) return true;
    return false;
  };
  for (let grown = true; grown; ) {
    grown = false;
    const { top, left, bottom, right } = block;
    if (top > 0 && anyIn(top - 1, left - 1, top - 1, right + 1)) [block.top, grown] = [top - 1, true];
    if (anyIn(bottom + 1, left - 1, bottom + 1, right + 1)) [block.bottom, grown] = [bottom + 1, true];
    if (left > 0 && anyIn(top - 1, left - 1, bottom + 1, left - 1)) [block.left, grown] = [left - 1, true];
    if (anyIn(top - 1, right + 1, bottom + 1, right + 1)) [block.right, grown] = [right + 1, true];
  }
  return block;
}
