/** A finger chooses a cell with a tap and opens it with the next tap on it, however much later that comes. */
import type Handsontable from "handsontable/base";
import type { EditSession } from "./edit-session.ts";
import type { GridView } from "./grid-view.ts";

type Hooks = Pick<Handsontable.GridSettings, "beforeOnCellMouseDown" | "afterOnCellMouseUp">;

/** `before` is what happens at a press of the mouse and at a tap, before the cell is chosen. */
export function tapping(
  grid: GridView,
  session: EditSession,
  before: NonNullable<Hooks["beforeOnCellMouseDown"]>,
): Hooks {
  let opens = false;
  return {
    beforeOnCellMouseDown: (event, coords, ...more) => {
      const { row, column } = grid.chosen();
      const again =
        coords.row === row && coords.col === column && !!grid.hot.getSelectedRangeLast()?.isSingle();
      opens = event.type === "touchstart" && again && grid.hot.isListening() && !session.draft;
      // Both ends of a tap come at once from the library; of a finger that rests on the cell they do not.
      queueMicrotask(() => {
        opens = false;
      });
      before(event, coords, ...more);
    },
    afterOnCellMouseUp: () => {
      if (opens) grid.edit();
    },
  };
}
