/**
 * Moving whole rows, columns and pages to another place. The cells themselves move: every reference, name, note,
 * setting and trial follows, so that no answer changes but where a range takes in or loses a row.
 */
import { marksMoved } from "./cell-marks.ts";
import { everywhere } from "./edit.ts";
import { hiddenRows, withHidden } from "./hidden-rows.ts";
import { type Axis, afterMapping, type Span } from "./references.ts";
import { BLANK_COLUMN, type Book, type Page, type Stage } from "./shape.ts";

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
