/** The rows of a page that are not shown. They count like any others. */
import { rememberWithObject } from "../../functions/memo.ts";
import { MOST_ROWS, type Page } from "./shape.ts";

const RUN = /^([1-9]\d{0,5}):([1-9]\d{0,5})$/;

/** Whether a text is a run of rows, such as "5:9". */
export const isRowRun = (text: string): boolean => RUN.test(text);

/** The rows of runs such as "5:9", counted from 0, those beyond the last of a page left out. */
export function rowsOfRuns(runs: readonly string[]): Set<number> {
  const rows = new Set<number>();
  for (const run of runs) {
    const [first, last] = RUN.exec(run)!.slice(1).map(Number) as [number, number];
    for (let row = Math.min(first, last); row <= Math.min(Math.max(first, last), MOST_ROWS); row += 1)
      rows.add(row - 1);
  }
  return rows;
}

/** Rows, counted from 0, as the fewest runs in order; rows beyond the last of a page are left out. */
export function rowRuns(rows: Iterable<number>): string[] {
  const runs: [number, number][] = [];
  for (const row of [...new Set(rows)].sort((a, b) => a - b)) {
    if (row < 0 || row >= MOST_ROWS) continue;
    const last = runs.at(-1);
    if (last && last[1] === row - 1) last[1] = row;
    else runs.push([row, row]);
  }
  return runs.map(([first, last]) => `${first + 1}:${last + 1}`);
}

const remembered = rememberWithObject<readonly string[], ReadonlySet<number>>();
const NONE: ReadonlySet<number> = new Set();

/** The hidden rows of a page, counted from 0. */
export const hiddenRows = ({ hidden }: Page): ReadonlySet<number> =>
  hidden ? remembered(hidden, () => rowsOfRuns(hidden)) : NONE;

/** The page with these rows hidden and no others. */
export function withHidden(page: Page, rows: Iterable<number>): Page {
  const { hidden: _, ...rest } = page;
  const hidden = rowRuns(rows);
  return hidden.length > 0 ? { ...rest, hidden } : rest;
}
