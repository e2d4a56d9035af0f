/** Where the keys lead that go further than to the next cell. */
import type { Place } from "../../book/address.ts";
import { hiddenRows } from "../../book/hidden-rows.ts";
import type { Book } from "../../book/shape.ts";
import { type Page, typedAt } from "../../book/shape.ts";

/** The edges of the grid: how many rows and columns it shows. */
interface Size {
  readonly tall: number;
  readonly wide: number;
}

/**
 * The cell that Ctrl and an arrow lead to: within filled cells the last of them before a blank one, from
 * there or from a blank cell the next filled one, and at last the edge of the grid. Hidden rows are passed over.
 */
export function blockEnd(
  book: Book,
  from: Place,
  down: -1 | 0 | 1,
  across: -1 | 0 | 1,
  { tall, wide }: Size,
): Place {
  const hidden = hiddenRows(book.pages[from.page] as Page);
  const filled = ({ page, row, column }: Place) => typedAt(book, page, row, column).trim() !== "";
  const after = ({ page, row, column }: Place): Place | null => {
    let next = row + down;
    while (down !== 0 && hidden.has(next)) next += down;
    const to = { page, row: next, column: column + across };
    return to.row < 0 || to.row >= tall || to.column < 0 || to.column >= wide ? null : to;
  };
  let at = from;
  let next = after(at);
  if (next && filled(at) && filled(next)) {
    while (next && filled(next)) [at, next] = [next, after(next)];
    return at;
  }
  while (next && !filled(next)) [at, next] = [next, after(next)];
  return next ?? at;
}

/** A run of Tab along a row: Enter at its end leads back to the column in which it began. */
export class TabRun {
  #run: { readonly row: number; readonly from: number; readonly at: number } | null = null;

  /** Tab was pressed in a cell and leads to the next column. */
  tab(row: number, column: number): void {
    const run = this.#run;
    const goesOn = run?.row === row && run.at === column;
    this.#run = { row, from: goesOn ? run.from : column, at: column + 1 };
  }

  /** The column to come back to from a cell; null where no run leads to it. */
  startFor(row: number, column: number): number | null {
    const run = this.#run;
    return run?.row === row && run.at === column ? run.from : null;
  }
}
