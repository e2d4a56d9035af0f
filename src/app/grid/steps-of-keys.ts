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

/** How many rows and columns on. */
interface Step {
  readonly row: number;
  readonly col: number;
}

type Cell = Pick<Place, "row" | "column">;

/** A run of Tab along a row: Enter at its end leads back to the column in which it began. */
export class TabRun {
  #run: { readonly row: number; readonly from: number; readonly at: number } | null = null;

  /** Whether Tab was pressed last while a cell of the last column was edited. */
  #endsRow = false;

  /** Tab was pressed in a cell and leads to the next column, or ends the row. */
  tab(row: number, column: number, endsRow = false): void {
    const run = this.#run;
    this.#endsRow = endsRow;
    const goesOn = run?.row === row && run.at === column;
    this.#run = { row, from: goesOn ? run.from : column, at: column + 1 };
  }

  /** How far Enter leads from a cell that was edited. */
  afterEnter({ row, column }: Cell): Step {
    return { row: 1, col: (this.startFor(row, column) ?? column) - column };
  }

  /** How far Tab leads: to the right; from a cell of the last column that was edited, to where Enter would lead. */
  afterTab({ row, column }: Cell): Step {
    const from = this.#run?.row === row ? this.#run.from : column;
    return this.#endsRow ? { row: 1, col: from - column } : { row: 0, col: 1 };
  }

  /** The column to come back to from a cell; null where no run leads to it. */
  startFor(row: number, column: number): number | null {
    const run = this.#run;
    return run?.row === row && run.at === column ? run.from : null;
  }
}
