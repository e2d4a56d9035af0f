/** Pointing at cells with the mouse or a finger while a formula is typed: the cell's name or address is put in. */
import type Handsontable from "handsontable/base";
import { blockAddress, blockText, nameAt, nameText } from "../../book/names.ts";
import type { Book } from "../../book/shape.ts";
import { wantsValue } from "./caret.ts";
import { type Cell, type EditSession, samePlace } from "./edit-session.ts";
import type { GridView } from "./grid-view.ts";

/** What points at a cell of `page`, or at the block from one cell to another, in a formula on the page `home`. */
export function pointer(book: Book, home: number, page: number, from: Cell, to: Cell): string {
  const [top, bottom] = [Math.min(from.row, to.row), Math.max(from.row, to.row)];
  const [left, right] = [Math.min(from.column, to.column), Math.max(from.column, to.column)];
  const block = { page, top, left, bottom, right };
  const named = nameAt(book, block);
  if (named) return nameText(book, named, home);
  return page === home ? blockText(block) : blockAddress(book, block);
}

type Hooks = Required<Pick<Handsontable.GridSettings, "beforeOnCellMouseDown" | "beforeOnCellMouseOver">>;

export function pointing(grid: GridView, session: EditSession): Hooks {
  const put = (from: Cell, to: Cell): void => {
    const { draft } = session;
    if (!draft) return;
    const again = session.pointed;
    const start = again?.start ?? draft.caret;
    const text = pointer(session.store.shown, draft.place.page, grid.index, from, to);
    draft.field.setRangeText(text, start, again?.end ?? start, "end");
    draft.field.dispatchEvent(new Event("input", { bubbles: true }));
    session.pointed = { from, start, end: start + text.length };
    if (draft.where === "bar") session.resume();
  };
  return {
    beforeOnCellMouseDown: (event, coords) => {
      const { draft } = session;
      const cell = { row: coords.row ?? -1, column: coords.col ?? -1 };
      // A finger has no button.
      if (!draft || (event.button ?? 0) !== 0 || cell.row < 0 || cell.column < 0) return;
      if (samePlace(draft.place, { page: grid.index, ...cell })) return;
      if (!session.pointed && !wantsValue(draft.text, draft.caret)) {
        // The other cell is looked at; an unfinished formula goes on in the bar.
        if (!session.isUnfinished) return;
        session.leave();
        session.resume();
        return;
      }
      event.preventDefault();
      event.stopImmediatePropagation();
      put(cell, cell);
    },
    beforeOnCellMouseOver: (event, coords) => {
      const { pointed } = session;
      if (!pointed || event.buttons !== 1) return;
      const to = { row: Math.max(coords.row ?? 0, 0), column: Math.max(coords.col ?? 0, 0) };
      event.stopImmediatePropagation();
      put(pointed.from, to);
    },
  };
}
