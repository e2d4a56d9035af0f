/** The kinds that a formula expects of the columns of a list that it reads by its headings. */
import { asBlock, listOf } from "../../functions/block.ts";
import type { ListForm } from "../../functions/define.ts";
import type { Book } from "../book/shape.ts";
import { type Code, codeOf, PIECE } from "./kind-codes.ts";
import { Holds, isFormulaHeld } from "./kind-content.ts";
import type { Area } from "./references.ts";

/** The most cells of one area of which a kind is expected. */
export const MOST_CELLS = 2000;

/** A kind that a formula expects of a cell whatever else is known. */
export interface Asked {
  readonly cell: number;
  readonly code: Code;
}

/** The numbers of cells, and what they hold. */
interface Numbered {
  number(page: number, row: number, column: number): number;
  holds(cell: number): Holds;
}

/** What a function of this form expects of the cells of a list; nothing when it refuses the list. */
export function askedOfColumns(book: Book, area: Area, form: ListForm, cells: Numbered): Asked[] {
  const { rows = [], columns: over = [] } = book.pages[area.page] ?? {};
  const wide = Array.from({ length: area.right - area.left + 1 }, (_, i) => area.left + i);
  const block = asBlock(
    wide.map((column) => rows[area.top]?.[column] ?? ""),
    wide.length,
    wide.map((column) => over[column]?.heading ?? ""),
  );
  let columns: ReadonlyMap<string, number>;
  try {
    columns = listOf(block, form).columns;
  } catch {
    // The function refuses the list, and says why.
    return [];
  }
  const asked: Asked[] = [];
  for (const [field, at] of columns) {
    const column = area.left + at;
    const code = codeOf(form.columns[field]!.take.kind);
    let seen = 0;
    for (let row = area.top; row <= Math.min(area.bottom, rows.length - 1) && seen < MOST_CELLS; row += 1) {
      if (!rows[row]![column]) continue;
      seen += 1;
      const cell = cells.number(area.page, row, column);
      const holds = cells.holds(cell);
      if (code !== PIECE || holds === Holds.outline || isFormulaHeld(holds)) asked.push({ cell, code });
    }
  }
  return asked;
}
