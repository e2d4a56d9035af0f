/** Keys of the grid beyond the library's own. */
import type { Block } from "../../book/address.ts";
import { moveColumns, moveRows } from "../../store/arranging.ts";
import { insertColumns, insertRows, removeColumns, removeRows } from "../../store/commands.ts";
import type { Command } from "../../store/store.ts";
import { inTurn, saidIfLarge, takeStep } from "../progress/large-steps.ts";
import type { EditSession } from "./edit-session.ts";
import { fillWithin } from "./fill.ts";
import { fill } from "./grid-acts.ts";
import type { GridView } from "./grid-view.ts";
import type { Form } from "./RowsAndColumns.tsx";

/** Adds fill, the menu's keys, the note's, and those that insert, delete and move rows and columns to the grid. */
export function addGridKeys(
  grid: GridView,
  session: EditSession,
  openMenu: () => void,
  openForm: (form: Form) => void,
): void {
  const fillTowards = (direction: "down" | "right") => () => {
    const block = grid.block();
    const pair = block && fillWithin(block, direction);
    if (pair) fill(grid, session, ...pair);
  };
  const run = (command: (block: Block) => Command | null, chosen: (block: Block) => Block) => () =>
    inTurn(() => {
      const block = grid.block();
      const step = block && command(block);
      if (!step) return;
      const { wholly } = grid;
      saidIfLarge(session.store, grid.page, step.label, () => {
        if (!session.run(step, { page: block.page, row: block.top, column: block.left })) return;
        const next = chosen(block);
        if (wholly === "columns") grid.hot.selectColumns(next.left, next.right);
        else if (wholly === "rows") grid.hot.selectRows(next.top, next.bottom);
        else grid.selectBlock(next);
      });
    });
  const tall = ({ top, bottom }: Block) => bottom - top + 1;
  const wide = ({ left, right }: Block) => right - left + 1;
  const byRows = () => grid.wholly !== "columns";
  const stay = (block: Block) => block;
  const insert = run(
    (block) =>
      byRows()
        ? insertRows(block.page, block.top, tall(block))
        : insertColumns(block.page, block.left, wide(block)),
    stay,
  );
  const remove = run(
    (block) =>
      byRows()
        ? removeRows(block.page, block.top, tall(block))
        : removeColumns(block.page, block.left, wide(block)),
    stay,
  );
  const move = (down: number, across: number) =>
    run(
      (block) => {
        if (down !== 0) {
          const to = down < 0 ? block.top - 1 : block.bottom + 2;
          return to < 0 ? null : moveRows(block.page, block.top, tall(block), to);
        }
        const to = across < 0 ? block.left - 1 : block.right + 2;
        return to < 0 ? null : moveColumns(block.page, block.left, wide(block), to);
      },
      (block) => ({
        ...block,
        top: block.top + down,
        bottom: block.bottom + down,
        left: block.left + across,
        right: block.right + across,
      }),
    );
  const group = "ellwand";
  const context = grid.hot.getShortcutManager().getContext("grid");
  const far = ARROWS.flatMap(([arrow, down, across]) => {
    const keys = ["Control/Meta", arrow];
    // The library's own lead to the edge of the grid.
    context?.removeShortcutsByKeys(keys);
    context?.removeShortcutsByKeys(["Control/Meta", "Shift", arrow]);
    return [
      { keys: [keys], callback: () => grid.goFar(down, across, false), group },
      {
        keys: [["Control/Meta", "Shift", arrow]],
        callback: () => grid.goFar(down, across, true),
        group,
      },
    ];
  });
  // The library's own lead to the first column that is not kept in sight.
  for (const keys of [["Home"], ["Control/Meta", "Home"]]) context?.removeShortcutsByKeys(keys);
  const home = (top: boolean) => () => {
    const { row } = grid.chosen();
    grid.hot.selectCell(top ? 0 : row, 0);
  };
  context?.addShortcuts([
    { keys: [["Home"]], callback: home(false), group },
    { keys: [["Control/Meta", "Home"]], callback: home(true), group },
    ...far,
    { keys: [["Control/Meta", "d"]], callback: fillTowards("down"), group },
    { keys: [["Control/Meta", "r"]], callback: fillTowards("right"), group },
    { keys: [["Shift", "F10"], ["ContextMenu"]], callback: openMenu, group },
    { keys: [["Shift", "F2"]], callback: () => openForm("note"), group },
    { keys: [["Alt", "ArrowDown"]], callback: () => grid.edit(), group },
    { keys: [["Alt", "Insert"]], callback: insert, group },
    { keys: [["Alt", "Delete"]], callback: remove, group },
    { keys: [["Alt", "Shift", "ArrowUp"]], callback: move(-1, 0), group },
    { keys: [["Alt", "Shift", "ArrowDown"]], callback: move(1, 0), group },
    { keys: [["Alt", "Shift", "ArrowLeft"]], callback: move(0, -1), group },
    { keys: [["Alt", "Shift", "ArrowRight"]], callback: move(0, 1), group },
  ]);
}

const ARROWS = [
  ["ArrowUp", -1, 0],
  ["ArrowDown", 1, 0],
  ["ArrowLeft", 0, -1],
  ["ArrowRight", 0, 1],
] as const;

/** Ctrl+F, wherever the keyboard is but in a dialog: the browser's own search sees only the rows on the screen. */
export function listenToFind(open: () => void): () => void {
  const key = (event: KeyboardEvent) => {
    const plain = (event.ctrlKey || event.metaKey) && !event.altKey && !event.shiftKey;
    if (!plain || event.key.toLowerCase() !== "f" || document.querySelector("dialog[open]")) return;
    event.preventDefault();
    event.stopPropagation();
    open();
  };
  document.addEventListener("keydown", key, true);
  return () => document.removeEventListener("keydown", key, true);
}

const types = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(?:INPUT|TEXTAREA|SELECT)$/.test(target.tagName));

/**
 * Ctrl+Z and Ctrl+Y (or Ctrl+Shift+Z) wherever no text is being typed; there they are the field's own.
 * `onRefused` hears why a step could not be taken.
 */
export function listenToUndo(session: EditSession, onRefused: (sentence: string) => void): () => void {
  const key = (event: KeyboardEvent) => {
    if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey) || types(event.target))
      return;
    const letter = event.key.toLowerCase();
    if (letter !== "y" && letter !== "z") return;
    const again = letter === "y" || event.shiftKey;
    takeStep(session.store, again, onRefused);
    event.preventDefault();
  };
  document.addEventListener("keydown", key);
  return () => document.removeEventListener("keydown", key);
}
