/** The library's settings: every change becomes a command, everything shown is read from the engine. */
import type Handsontable from "handsontable/base";
import type { Block } from "../../book/address.ts";
import { BLANK_COLUMN, WIDTHS } from "../../book/shape.ts";
import { changeColumn } from "../../store/commands.ts";
import { guarded } from "../shell/faults.ts";
import { cellEditor } from "./editor.ts";
import type { Hand } from "./hand.ts";
import { drawHeading } from "./paint.ts";
import { pointing } from "./pointing.ts";
import type { Table } from "./table.ts";

const ROW_HEIGHT = 26;

interface Range {
  getTopStartCorner(): { row: number | null; col: number | null };
  getBottomEndCorner(): { row: number | null; col: number | null };
}

/** On a narrow screen no column is so wide, in pixels, that the figure beside it is out of sight. */
const NARROW = matchMedia("(max-width: 600px)");
const MOST_NARROW = 165;

function blockOf(range: Range, page: number): Block {
  const [from, to] = [range.getTopStartCorner(), range.getBottomEndCorner()];
  return { page, top: from.row ?? 0, left: from.col ?? 0, bottom: to.row ?? 0, right: to.col ?? 0 };
}

export function settings(table: Table, hand: Hand): Handsontable.GridSettings {
  const widthOf = (column: number) =>
    Math.min(
      table.page.columns[column]?.width ?? BLANK_COLUMN.width,
      NARROW.matches ? MOST_NARROW : Infinity,
    );
  return safely({
    licenseKey: import.meta.env.VITE_HANDSONTABLE_KEY ?? "non-commercial-and-evaluation",
    theme: "ht-theme-ellwand",
    injectCoreCss: false,
    undo: false,
    width: "100%",
    height: "100%",
    rowHeaders: true,
    colHeaders: true,
    columnHeaderHeight: 42,
    rowHeaderWidth: 46,
    rowHeights: ROW_HEIGHT,
    autoColumnSize: false,
    autoRowSize: false,
    autoWrapRow: false,
    autoWrapCol: false,
    wordWrap: false,
    trimWhitespace: false,
    outsideClickDeselects: false,
    manualColumnResize: true,
    fillHandle: { autoInsertRow: false },
    editor: cellEditor(
      hand,
      () => table.index,
      (row, column, text) => table.change([[row, column, null, text]]),
    ) as never,
    // Any text is text.
    sanitizer: (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;"),
    renderer: (_hot, td, row, column) => {
      table.draw(td, row, column);
      return td;
    },
    modifyData: (row, column, holder, io) => {
      if (io === "get") holder.value = table.draftAt(row, column) ?? table.view(row, column).shown;
    },
    // The editor opens with it.
    modifySourceData: (row, column, holder, io) => {
      if (io === "get") holder.value = hand.textAt(table.place(row, Number(column)));
    },
    beforeChange: (changes) => table.change(changes as never),
    beforeCreateRow: () => false,
    beforeCreateCol: () => false,
    beforeRemoveRow: () => false as never,
    beforeRemoveCol: () => false as never,
    beforeAutofill: ((_data: unknown, source: Range, target: Range) => {
      table.fill(blockOf(source, table.index), blockOf(target, table.index));
      return false;
    }) as never,
    // The library forgets to let go of the handle after a double click, and its box follows the mouse.
    afterOnCellCornerDblClick: () => {
      (
        table.hot.getPlugin("autofill") as unknown as { mouseDownOnCellCorner: boolean }
      ).mouseDownOnCellCorner = false;
    },
    colWidths: widthOf,
    modifyColWidth: (_width, column) => widthOf(column),
    // The plugin's own copy of a width is forgotten at once: the book keeps it.
    afterColumnResize: (size, column) => {
      table.hot.getPlugin("manualColumnResize").clearManualSize(column);
      const width = Math.round(Math.min(WIDTHS[1], Math.max(WIDTHS[0], size)));
      hand.run(changeColumn(table.index, column, { width }), table.place(0, column));
    },
    afterGetColHeader: (column, th) => drawHeading(th, table.page.columns[column]?.heading ?? ""),
    afterSelection: (row, column) => table.chose(row, column),
    ...pointing(table, hand),
    // The library looks at the answer, not at whether the event was stopped.
    beforeKeyDown: ((event: KeyboardEvent) => {
      if (!hand.take(event)) return undefined;
      event.preventDefault();
      return false;
    }) as never,
  });
}

/** What the library gets from a hook that failed: it changes nothing itself, and the cell stays as it is. */
const OTHERWISE: Record<string, unknown> = {
  beforeChange: false,
  beforeAutofill: false,
  colWidths: BLANK_COLUMN.width,
  modifyColWidth: BLANK_COLUMN.width,
  sanitizer: "",
};

/** The settings with every hook guarded: a fault in one is told, and the grid goes on. */
function safely(all: Handsontable.GridSettings): Handsontable.GridSettings {
  const entries = Object.entries(all).map(([name, hook]) => {
    // The editor is no hook but a thing of the library's own making.
    if (typeof hook !== "function" || name === "editor") return [name, hook];
    return [name, (...args: unknown[]) => guarded(() => hook(...args), OTHERWISE[name])];
  });
  return Object.fromEntries(entries);
}
