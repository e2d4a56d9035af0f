/**
 * Moving the references of formulas: when rows or columns are inserted or deleted, when a page
 * is renamed or deleted, and when a formula is copied elsewhere. Everything else typed stays as
 * it was.
 */
import { columnLetters, columnNumber, pageReference } from "./address.ts";
import { isFormula, tokens } from "./formula.ts";

export type Axis = "row" | "column";

/** A cell, or one end of a row of columns or rows: then the other number is null. */
interface End {
  readonly page: string;
  readonly fixedColumn: string;
  readonly column: number | null;
  readonly fixedRow: string;
  readonly row: number | null;
}

const END = /^((?:'(?:[^']|'')+'|[^'!$]+)!)?(\$?)([A-Za-z]{1,3})?(\$?)(\d+)?$/;

function readEnd(text: string): End {
  const [, page = "", first = "", letters, second = "", row] = END.exec(text)!;
  return {
    page,
    fixedColumn: letters === undefined ? "" : first,
    column: letters === undefined ? null : columnNumber(letters),
    fixedRow: letters === undefined ? first : second,
    row: row === undefined ? null : Number(row) - 1,
  };
}

function writeEnd({ page, fixedColumn, column, fixedRow, row }: End): string {
  const across = column === null ? "" : `${fixedColumn}${columnLetters(column)}`;
  return `${page}${across}${row === null ? "" : `${fixedRow}${row + 1}`}`;
}

const LOST = "#REF!";

/**
 * Rewrites each single cell (`to` is null) and each range, and with `onPage` the page, "Draft!", of each
 * name that has one; null loses it.
 */
function rewrite(
  formula: string,
  change: (from: End, to: End | null) => readonly [End, End | null] | null,
  onPage: (page: string) => string | null = (page) => page,
): string {
  if (!isFormula(formula)) return formula;
  const list = tokens(formula);
  const out: string[] = [];
  const put = (from: End, to: End | null) => {
    const moved = change(from, to);
    out.push(moved ? writeEnd(moved[0]) + (moved[1] ? `:${writeEnd(moved[1])}` : "") : LOST);
  };
  for (let i = 0; i < list.length; i += 1) {
    const { kind, text } = list[i]!;
    const last = list[i + 2];
    if (kind === "columns" || kind === "rows") {
      const [first, second] = text.split(/:(?=[^:]*$)/) as [string, string];
      put(readEnd(first), readEnd(second));
    } else if (kind === "cell" && list[i + 1]?.text === ":" && last?.kind === "cell") {
      put(readEnd(text), readEnd(last.text));
      i += 2;
    } else if (kind === "cell") put(readEnd(text), null);
    else if (kind === "name" && text.includes("!")) {
      const cut = text.lastIndexOf("!") + 1;
      const page = onPage(text.slice(0, cut));
      out.push(page === null ? LOST : page + text.slice(cut));
    } else out.push(text);
  }
  return out.join("");
}

const unquoted = (page: string): string => page.slice(0, -1).replace(/^'|'$/g, "").replaceAll("''", "'");

const isPage = (page: string, title: string): boolean => unquoted(page).toLowerCase() === title.toLowerCase();

/** Whether a reference written on page `home` points at page `title`. */
const pointsAt = ({ page }: End, home: string, title: string): boolean =>
  page === "" ? home === title : isPage(page, title);

/**
 * A formula on page `home` after `count` rows or columns were put in before `at` on page `title`
 * (`count` < 0: taken out from `at` on). A reference to what was taken out becomes #REF!.
 */
export function afterShift(
  formula: string,
  home: string,
  title: string,
  axis: Axis,
  at: number,
  count: number,
): string {
  const gone = (value: number) => count < 0 && value >= at && value < at - count;
  const moved = (value: number) => (value < at ? value : value + count);
  return rewrite(formula, (from, to) => {
    const [first, last] = [from[axis], to ? to[axis] : from[axis]];
    if (first === null || last === null || !pointsAt(from, home, title)) return [from, to];
    // A range that loses an end shrinks to what is left of it, whichever way round it is written.
    const [low, high] = [Math.min(first, last), Math.max(first, last)];
    const newLow = gone(low) ? at : moved(low);
    const newHigh = gone(high) ? at - 1 : moved(high);
    if (newHigh < newLow) return null;
    const place = (value: number) => (value === low ? newLow : newHigh);
    return [{ ...from, [axis]: place(first) }, to && { ...to, [axis]: place(last) }];
  });
}

/** Rows and columns from and to, both included, counted from 0; null where a reference names whole columns or rows. */
export interface Span {
  readonly top: number | null;
  readonly bottom: number | null;
  readonly left: number | null;
  readonly right: number | null;
}

/** A formula on page `home` with every reference to page `title` put where `map` says; null loses it. */
export const afterMapping = (
  formula: string,
  home: string,
  title: string,
  map: (span: Span) => Span | null,
): string =>
  rewrite(formula, (from, to) => {
    if (!pointsAt(from, home, title)) return [from, to];
    const last = to ?? from;
    const order = (a: number | null, b: number | null) =>
      a === null || b === null ? [null, null] : [Math.min(a, b), Math.max(a, b)];
    const [top, bottom] = order(from.row, last.row) as [number | null, number | null];
    const [left, right] = order(from.column, last.column) as [number | null, number | null];
    const next = map({ top, bottom, left, right });
    if (!next) return null;
    const upright = (from.row ?? 0) <= (last.row ?? 0);
    const rightward = (from.column ?? 0) <= (last.column ?? 0);
    const first = {
      ...from,
      row: upright ? next.top : next.bottom,
      column: rightward ? next.left : next.right,
    };
    return [
      first,
      to && { ...to, row: upright ? next.bottom : next.top, column: rightward ? next.right : next.left },
    ];
  });

/** A formula on page `home` after the page `title` was taken out: what pointed there becomes #REF!. */
export const afterRemoval = (formula: string, home: string, title: string): string =>
  rewrite(
    formula,
    (from, to) => (pointsAt(from, home, title) ? null : [from, to]),
    (page) => (isPage(page, title) ? null : page),
  );

/** A formula copied `rows` down and `columns` to the right: what is not fixed by $ moves along. */
export function copied(formula: string, rows: number, columns: number): string {
  const move = (end: End): End => ({
    ...end,
    row: end.row === null || end.fixedRow ? end.row : end.row + rows,
    column: end.column === null || end.fixedColumn ? end.column : end.column + columns,
  });
  const inside = ({ row, column }: End) => (row ?? 0) >= 0 && (column ?? 0) >= 0;
  return rewrite(formula, (from, to) => {
    const [first, last] = [move(from), to && move(to)];
    return inside(first) && (!last || inside(last)) ? [first, last] : null;
  });
}

/** A formula after the page `from` got the title `to`. */
export function afterRename(formula: string, from: string, to: string): string {
  const page = (text: string) => (text !== "" && isPage(text, from) ? `${pageReference(to)}!` : text);
  const rename = (end: End): End => ({ ...end, page: page(end.page) });
  return rewrite(formula, (first, last) => [rename(first), last && rename(last)], page);
}

/** A block of a page that goes elsewhere, by the pages' titles; rows and columns counted from 0. */
export interface Move {
  readonly from: Area;
  readonly to: Area;
  /** Whether what a cell of the target held is gone: it was not blank, and did not move itself. */
  readonly isLost: (row: number, column: number) => boolean;
}

/** Both corners included. */
export interface Area {
  readonly title: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Whether a row and a column lie in an area. */
export const within = (row: number, column: number, { top, left, bottom, right }: Area): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

/**
 * A formula of page `home` that stands on page `newHome` after a block was moved. What moved is
 * followed, whether it is a cell or a range that moved as a whole; a reference to cells that were
 * overwritten becomes #REF!; any other keeps pointing where it did, with its page written out
 * where the formula left that page.
 */
export function afterMove(
  formula: string,
  home: string,
  newHome: string,
  { from, to, isLost }: Move,
): string {
  return rewrite(formula, (first, last) => {
    const page = first.page === "" ? home : unquoted(first.page);
    const corners = cornersOf(first, last);
    const lies = (area: Area) =>
      corners?.every(([row, column]) => within(row, column, area)) &&
      page.toLowerCase() === area.title.toLowerCase();
    const moves = lies(from);
    if (!moves && lies(to) && isAnyLost(corners!, isLost)) return null;
    const there = moves ? to.title : page;
    const stays = there.toLowerCase() === page.toLowerCase();
    const written = first.page === "" ? there.toLowerCase() !== newHome.toLowerCase() : !stays;
    const reference = written ? `${pageReference(there)}!` : first.page;
    const put = (end: End): End => ({
      ...end,
      page: end === first || end.page !== "" ? reference : "",
      ...(moves && { row: end.row! + to.top - from.top, column: end.column! + to.left - from.left }),
    });
    return [put(first), last && put(last)];
  });
}

/** The corners of a cell or a range; null for whole rows and columns. */
function cornersOf(first: End, last: End | null): readonly (readonly [number, number])[] | null {
  const ends = last ? [first, last] : [first];
  if (ends.some(({ row, column }) => row === null || column === null)) return null;
  return ends.map(({ row, column }) => [row!, column!] as const);
}

function isAnyLost(corners: readonly (readonly [number, number])[], isLost: Move["isLost"]): boolean {
  const [rows, columns] = [corners.map(([row]) => row), corners.map(([, column]) => column)];
  for (let row = Math.min(...rows); row <= Math.max(...rows); row += 1)
    for (let column = Math.min(...columns); column <= Math.max(...columns); column += 1)
      if (isLost(row, column)) return true;
  return false;
}
