/** Sorting the rows of a block: every reference, name, note, setting and trial follows its cell, so that no answer changes. */
import { phrase } from "../../functions/phrase.ts";
import { type Block, cellAddress, columnLetters, fullAddress, type Place } from "./address.ts";
import { marksMoved } from "./cell-marks.ts";
import { everywhere } from "./edit.ts";
import { hiddenRows } from "./hidden-rows.ts";
import { afterMapping, type Span } from "./references.ts";
import type { Book } from "./shape.ts";

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
