/** Which cells an engine must be given again to go from one book to the next. */
import { changedRows } from "../book/changed-rows.ts";
import type { Typing } from "../book/edit.ts";
import { sameWrittenOut } from "../book/names.ts";
import { type Book, cellsIn, type Page } from "../book/shape.ts";
import { isListHeading } from "./columns-read.ts";

/** Up to this many cells are always given one by one, however small the book. */
const FEW = 500;

/** The share of a book's cells above which building it anew costs less. */
const SHARE = 1 / 2;

/**
 * The cells whose text or kind of column differs, in the order of the book; null when building
 * the next book anew costs less: when its pages or their headings differ, when names that are written out in formulas mean something
 * else, when its numbers are read differently, when a cell with a heading of a list changed, or more than half of all cells did.
 */
export function changedCells(old: Book, next: Book): readonly Typing[] | null {
  const samePages =
    old.pages.length === next.pages.length &&
    old.pages.every((page, i) => page.title === next.pages[i]!.title);
  if (!sameWrittenOut(old, next) || !sameHeadings(old, next)) return null;
  if (!samePages || old.unit !== next.unit || old.mark !== next.mark || old.decimal !== next.decimal)
    return null;
  const most = Math.max(FEW, SHARE * Math.max(cellsIn(old), cellsIn(next)));
  const changed: Typing[] = [];
  for (const [page, is] of next.pages.entries()) {
    const was = old.pages[page]!;
    if (was === is) continue;
    const turned = turnedColumns(was, is);
    const rows = turned
      ? Array.from({ length: Math.max(was.rows.length, is.rows.length) }, (_, row) => row)
      : changedRows(was.rows, is.rows);
    for (const row of rows) {
      const [before = [], after = []] = [was.rows[row], is.rows[row]];
      for (let column = 0; column < Math.max(before.length, after.length); column += 1) {
        const typed = after[column] ?? "";
        const former = before[column] ?? "";
        if (typed === former && !turned?.has(column)) continue;
        if (typed !== former && (isListHeading(typed) || isListHeading(former))) return null;
        changed.push({ page, row, column, typed });
      }
      if (changed.length > most) return null;
    }
  }
  return changed;
}

/** Whether all columns have the headings they had: a list is read by them. */
const sameHeadings = (old: Book, next: Book): boolean =>
  old.pages.every(({ columns: was }, i) => {
    const is = next.pages[i]?.columns ?? [];
    const heading = (list: Page["columns"], at: number) => list[at]?.heading ?? "";
    return (
      was === is ||
      [...(was.length > is.length ? was : is).keys()].every((at) => heading(was, at) === heading(is, at))
    );
  });

/** The columns that are of another kind than before; null when no column is. */
function turnedColumns(was: Page, is: Page): ReadonlySet<number> | null {
  if (was.columns === is.columns) return null;
  const count = Math.max(was.columns.length, is.columns.length);
  const kind = (page: Page, column: number) => page.columns[column]?.kind ?? "any";
  const turned = Array.from({ length: count }, (_, i) => i).filter((i) => kind(was, i) !== kind(is, i));
  return turned.length > 0 ? new Set(turned) : null;
}
