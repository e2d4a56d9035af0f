/** Keys of the grid beyond the library's own. */
import type { EditSession } from "./edit-session.ts";
import { fillWithin } from "./fill.ts";
import type { GridView } from "./grid-view.ts";

/** Adds Ctrl+D, Ctrl+R, the menu's keys and the note's key to the grid. */
export function addGridKeys(grid: GridView, openMenu: () => void, openNote: () => void): void {
  const fill = (direction: "down" | "right") => () => {
    const block = grid.block();
    const pair = block && fillWithin(block, direction);
    if (pair) grid.fill(...pair);
  };
  const group = "ellwand";
  grid.hot
    .getShortcutManager()
    .getContext("grid")
    ?.addShortcuts([
      { keys: [["Control/Meta", "d"]], callback: fill("down"), group },
      { keys: [["Control/Meta", "r"]], callback: fill("right"), group },
      { keys: [["Shift", "F10"], ["ContextMenu"]], callback: openMenu, group },
      { keys: [["Shift", "F2"]], callback: openNote, group },
    ]);
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
    const refusal = again ? session.store.redo() : session.store.undo();
    if (refusal) onRefused(refusal);
    event.preventDefault();
  };
  document.addEventListener("keydown", key);
  return () => document.removeEventListener("keydown", key);
}
