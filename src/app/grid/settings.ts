/** The library's settings: every change becomes a command, everything shown is read from the engine. */
import type Handsontable from "handsontable/base";
import type { Block } from "../../book/address.ts";
import { BLANK_COLUMN, WIDTHS } from "../../book/shape.ts";
import { fitColumns, moveColumns, moveRows } from "../../store/arranging.ts";
import { changeColumn } from "../../store/commands.ts";
import { guarded } from "../faults/faults.ts";
import { TEXT_SIZE } from "../text-size.ts";
import { markHidden, NARROW } from "./arrangement.ts";
import type { EditSession } from "./edit-session.ts";
import { cellEditor } from "./editor.ts";
import { fittingWidth } from "./fit.ts";
import { change, drag, fill } from "./grid-acts.ts";
import type { GridView } from "./grid-view.ts";
import { drawHeading } from "./paint.ts";
import { pointing } from "./pointing.ts";
import { tapping } from "./tapping.ts";

/** In pixels; a finger needs taller rows than a mouse. A line of type, what is free above and below it, and the line under it, as in grid.css. */
const ROW_HEIGHT = Math.ceil(19 * TEXT_SIZE) + 2 * (matchMedia("(pointer: coarse)").matches ? 12 : 3) + 1;

interface Range {
  getTopStartCorner(): { row: number | null; col: number | null };
  getBottomEndCorner(): { row: number | null; col: number | null };
}

/** On a narrow screen no column is so wide, in pixels, that the figure beside it is out of sight. */
const mostNarrow = () => Math.min(165 * TEXT_SIZE, 0.45 * innerWidth);

function blockOf(range: Range, page: number): Block {
  const [from, to] = [range.getTopStartCorner(), range.getBottomEndCorner()];
  return { page, top: from.row ?? 0, left: from.col ?? 0, bottom: to.row ?? 0, right: to.col ?? 0 };
}

export function settings(grid: GridView, session: EditSession): Handsontable.GridSettings {
  const widthOf = (column: number) =>
    Math.round(
      Math.min(
        (grid.page.columns[column]?.width ?? BLANK_COLUMN.width) * TEXT_SIZE,
        NARROW.matches ? mostNarrow() : Infinity,
      ),
    );
  const points = pointing(grid, session);
  return safely({
    licenseKey: import.meta.env.VITE_HANDSONTABLE_KEY ?? "non-commercial-and-evaluation",
    theme: "ht-theme-ellwand",
    injectCoreCss: false,
    undo: false,
    width: "100%",
    height: "100%",
    rowHeaders: true,
    colHeaders: true,
    columnHeaderHeight: Math.ceil(32 * TEXT_SIZE) + 10,
    rowHeaderWidth: Math.round(46 * TEXT_SIZE),
    rowHeights: ROW_HEIGHT,
    autoColumnSize: false,
    autoRowSize: false,
    enterMoves: (event: KeyboardEvent) =>
      event.shiftKey ? { row: 1, col: 0 } : grid.run.afterEnter(grid.chosen()),
    tabMoves: (event: KeyboardEvent) =>
      event.shiftKey ? { row: 0, col: 1 } : grid.run.afterTab(grid.chosen()),
    autoWrapRow: false,
    autoWrapCol: false,
    wordWrap: false,
    trimWhitespace: false,
    outsideClickDeselects: false,
    manualColumnResize: true,
    manualRowMove: true,
    manualColumnMove: true,
    // The rows are hidden in the plugin's index only: the book says which.
    hiddenRows: { rows: [], indicators: false, copyPasteEnabled: true },
    fillHandle: { autoInsertRow: false },
    editor: cellEditor(
      session,
      () => grid.index,
      (row, column, text) => change(grid, session, [[row, column, null, text]]),
    ) as never,
    // Any text is text.
    sanitizer: (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;"),
    renderer: (_hot, td, row, column) => {
      grid.draw(td, row, column);
      return td;
    },
    modifyData: (row, column, holder, io) => {
      if (io === "get") holder.value = grid.draftAt(row, column) ?? grid.view(row, column).shown;
    },
    // The editor opens with it.
    modifySourceData: (row, column, holder, io) => {
      if (io === "get") holder.value = session.textAt(grid.place(row, Number(column)));
    },
    beforeChange: (changes) => change(grid, session, changes as never),
    beforeCreateRow: () => false,
    beforeCreateCol: () => false,
    beforeRemoveRow: () => false as never,
    beforeRemoveCol: () => false as never,
    beforeAutofill: ((_data: unknown, source: Range, target: Range) => {
      fill(grid, session, blockOf(source, grid.index), blockOf(target, grid.index));
      return false;
    }) as never,
    // The library forgets to let go of the handle after a double click, and its box follows the mouse.
    afterOnCellCornerDblClick: () => {
      (
        grid.hot.getPlugin("autofill") as unknown as { mouseDownOnCellCorner: boolean }
      ).mouseDownOnCellCorner = false;
    },
    colWidths: widthOf,
    modifyColWidth: (_width, column) => widthOf(column),
    // The plugin's own copy of a width is forgotten at once: the book keeps it.
    afterColumnResize: (size, column, isDoubleClick) => {
      grid.hot.getPlugin("manualColumnResize").clearManualSize(column);
      if (isDoubleClick) {
        const widths = new Map([[column, fittingWidth(grid, column)]]);
        session.run(fitColumns(grid.index, widths), grid.place(0, column));
        return;
      }
      const width = Math.round(Math.min(WIDTHS[1], Math.max(WIDTHS[0], size / TEXT_SIZE)));
      session.run(changeColumn(grid.index, column, { width }), grid.place(0, column));
    },
    // Dragged rows and columns are moved in the book; the library's own order stays as it is.
    beforeRowMove: ((rows: number[], _last: number, to: number | undefined) => {
      drag(grid, session, "rows", rows, to, moveRows);
      return false;
    }) as never,
    beforeColumnMove: ((columns: number[], _last: number, to: number | undefined) => {
      drag(grid, session, "columns", columns, to, moveColumns);
      return false;
    }) as never,
    afterGetRowHeader: (row, th) => markHidden(th, grid.page, row),
    afterGetColHeader: (column, th) =>
      column >= 0 && drawHeading(th, column, grid.page.columns[column] ?? BLANK_COLUMN),
    afterSelection: (row, column) => grid.chose(row, column),
    ...tapping(grid, session, points.beforeOnCellMouseDown),
    beforeOnCellMouseOver: points.beforeOnCellMouseOver,
    // The library looks at the answer, not at whether the event was stopped.
    beforeKeyDown: ((event: KeyboardEvent) => {
      if (!session.offers.take(event) && !grid.endsRun(event)) return undefined;
      event.preventDefault();
      return false;
    }) as never,
  });
}

/** What the library gets from a hook that failed: it changes nothing itself, and the cell stays as it is. */
const OTHERWISE: Record<string, unknown> = {
  beforeChange: false,
  beforeAutofill: false,
  beforeRowMove: false,
  beforeColumnMove: false,
  colWidths: BLANK_COLUMN.width,
  modifyColWidth: BLANK_COLUMN.width,
  sanitizer: "",
};

/** The settings with every hook guarded: a fault in one is shown, and the grid goes on. */
function safely(all: Handsontable.GridSettings): Handsontable.GridSettings {
  const entries = Object.entries(all).map(([name, hook]) => {
    // The editor is no hook but a thing of the library's own making.
    if (typeof hook !== "function" || name === "editor") return [name, hook];
    return [name, (...args: unknown[]) => guarded(() => hook(...args), OTHERWISE[name])];
  });
  return Object.fromEntries(entries);
}
