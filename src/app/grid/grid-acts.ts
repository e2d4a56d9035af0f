/** What is typed, dragged and drawn out in the grid, as commands of the book. */
import { phrase, plural } from "../../../functions/phrase.ts";
import type { Block } from "../../book/address.ts";
import { typeCells } from "../../store/commands.ts";
import type { Command } from "../../store/store.ts";
import { cellsOf, MANY_CELLS, saidIfLarge, saidIfMany } from "../progress/large-steps.ts";
import type { EditSession } from "./edit-session.ts";
import { drawnOut } from "./fill.ts";
import type { GridView } from "./grid-view.ts";

/** What was typed in the grid's own editor, or emptied. False: the grid keeps nothing itself. */
export function change(
  view: GridView,
  session: EditSession,
  changes: readonly (readonly [number, string | number, unknown, unknown] | null)[],
): false {
  const typings = changes.flatMap((change) => {
    if (!change) return [];
    const [row, column, , text] = change;
    const typing = { page: view.index, row, column: Number(column), typed: String(text ?? "") };
    return session.isKept(typing, typing.typed) ? [] : [typing];
  });
  const first = typings[0];
  if (!first) return false;
  if (typings.length >= MANY_CELLS) {
    const what = () => phrase`Changing ${plural(typings.length, "# cell", "# cells")}`;
    saidIfMany(session.store, typings.length, what, () => session.run(typeCells(typings), first));
    return false;
  }
  const single = typings.length === 1;
  const kept = session.run(typeCells(typings), first, single ? first.typed : null);
  if (!kept && single) view.take(first);
  return false;
}

/** Moves dragged rows or columns before line `to` as one step, and chooses them where they came to. */
export function drag(
  view: GridView,
  session: EditSession,
  what: "rows" | "columns",
  lines: readonly number[],
  to: number | undefined,
  move: (page: number, at: number, count: number, to: number) => Command,
): void {
  const [at, count] = [Math.min(...lines), lines.length];
  if (to === undefined || (to >= at && to <= at + count)) return;
  const isOne = Math.max(...lines) - at + 1 === count;
  const step: Command = isOne
    ? move(view.index, at, count, to)
    : {
        label: "move",
        edit: () => ({
          refusal:
            what === "rows"
              ? phrase`only rows that lie side by side can be moved together`
              : phrase`only columns that lie side by side can be moved together`,
        }),
      };
  saidIfLarge(session.store, view.page, step.label, () => {
    if (!session.run(step, view.place(0, 0))) return;
    const first = to > at ? to - count : to;
    if (what === "rows") view.hot.selectRows(first, first + count - 1);
    else view.hot.selectColumns(first, first + count - 1);
  });
}

/** Draws `source` out over `target` as one step. */
export function fill(view: GridView, session: EditSession, source: Block, target: Block): void {
  const whole: Block = {
    page: view.index,
    top: Math.min(source.top, target.top),
    left: Math.min(source.left, target.left),
    bottom: Math.max(source.bottom, target.bottom),
    right: Math.max(source.right, target.right),
  };
  const cells = cellsOf(target);
  const what = () => phrase`Filling ${plural(cells, "# cell", "# cells")}`;
  saidIfMany(session.store, cells, what, () => {
    const typings = drawnOut(session.store.book, source, target);
    session.run({ ...typeCells(typings), label: phrase`fill cells` }, view.place(whole.top, whole.left));
    view.selectBlock(whole);
  });
}
