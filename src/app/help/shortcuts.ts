/** The keys of the whole page: what they do, what they are called in the help. */

import { droppedHandle, type OwnHandle } from "../files/own-file/pickers.ts";
import { isPhotograph } from "../grid/photo/receive.ts";

interface Acts {
  readonly help: () => void;
  readonly begin: () => void;
  readonly books: () => void;
  readonly save: () => void;
  readonly saveElsewhere: () => void;
  readonly print: () => void;
  readonly checks: () => void;
  readonly page: (by: number) => void;
  readonly part: (by: number) => void;
  /** `handle` is there where the browser lets the page save to the same file again. */
  readonly file: (file: File, handle?: OwnHandle) => void;
}

interface Shortcut {
  readonly keys: string;
  readonly does: string;
  /** Left out for a shortcut that is only listed here and handled elsewhere. */
  readonly hears?: (event: KeyboardEvent) => boolean;
  readonly act?: (acts: Acts, event: KeyboardEvent) => void;
}

const plain = ({ ctrlKey, metaKey, altKey }: KeyboardEvent) => !ctrlKey && !metaKey && !altKey;
const control = ({ ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent) =>
  (ctrlKey || metaKey) && !altKey && !shiftKey;
const alt = ({ ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent) =>
  altKey && !ctrlKey && !metaKey && !shiftKey;
const letter = ({ key }: KeyboardEvent) => key.toLowerCase();

export const SHORTCUTS: readonly Shortcut[] = [
  {
    keys: "F1",
    does: "open this help",
    hears: (event) => plain(event) && event.key === "F1",
    act: ({ help }) => help(),
  },
  {
    keys: "F6 · Shift F6",
    does: "next area of the screen, previous area",
    hears: (event) => plain(event) && event.key === "F6",
    act: ({ part }, { shiftKey }) => part(shiftKey ? -1 : 1),
  },
  {
    keys: "Alt Page Up · Alt Page Down",
    does: "previous page, next page",
    hears: (event) => alt(event) && (event.key === "PageUp" || event.key === "PageDown"),
    act: ({ page }, { key }) => page(key === "PageUp" ? -1 : 1),
  },
  {
    keys: "Alt N",
    does: "open New: begin a garment or a list from its questions",
    hears: (event) => alt(event) && letter(event) === "n",
    act: ({ begin }) => begin(),
  },
  {
    keys: "Ctrl S",
    does: "save the book to a file",
    hears: (event) => control(event) && letter(event) === "s",
    act: ({ save }) => save(),
  },
  {
    keys: "Ctrl Shift S",
    does: "save the book to another file",
    hears: (event) =>
      (event.ctrlKey || event.metaKey) && event.shiftKey && !event.altKey && letter(event) === "s",
    act: ({ saveElsewhere }) => saveElsewhere(),
  },
  {
    keys: "Ctrl O",
    does: "open Books: saved books, ready books, a file, a new book",
    hears: (event) => control(event) && letter(event) === "o",
    act: ({ books }) => books(),
  },
  {
    keys: "Alt P",
    does: "open Print: the pattern and the other documents of the book, as they will be on paper",
    hears: (event) => alt(event) && letter(event) === "p",
    act: ({ print }) => print(),
  },
  {
    keys: "Alt L",
    does: "show the list of problems and go to it; hide it",
    hears: (event) => alt(event) && letter(event) === "l",
    act: ({ checks }) => checks(),
  },
  { keys: "Ctrl Z · Ctrl Y", does: "undo, redo" },
  { keys: "Enter · F2", does: "in the grid: edit a cell; Escape cancels" },
  { keys: "Ctrl D · Ctrl R", does: "in the grid: fill down, fill to the right" },
  {
    keys: "Enter after Tab",
    does: "in the grid: back to the first column of the row that was typed, a row down",
  },
  { keys: "Ctrl arrows", does: "in the grid: to the end of the block; with Shift the selection goes along" },
  { keys: "Alt Down", does: "in the grid: the choices of a cell" },
  { keys: "Ctrl F", does: "find and replace in the book" },
  {
    keys: "Alt Insert · Alt Delete",
    does: "in the grid: insert rows, delete rows; columns when whole columns are selected",
  },
  {
    keys: "Alt Shift arrows",
    does: "in the grid: move rows or columns; in the list of pages: move the page",
  },
  { keys: "Shift F10", does: "in the grid: rows, columns, sort, find and note" },
  { keys: "Shift F2", does: "in the grid: write, read or delete the note of a cell" },
  { keys: "Tab", does: "while typing a formula: accept the suggested name" },
  { keys: "+ · − · 0 · arrows", does: "in a drawing: zoom in, zoom out, show all, move" },
];

/** Listens to the page's keys, and to a file dropped on it or pasted. Returns what ends it. */
export function addShortcuts(acts: Acts): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.isComposing || document.querySelector("dialog[open]")) return;
    const heard = SHORTCUTS.find(({ hears }) => hears?.(event));
    if (!heard?.act) return;
    event.preventDefault();
    event.stopPropagation();
    heard.act(acts, event);
  };
  const onDrag = (event: DragEvent) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  };
  const onDrop = (event: DragEvent) => {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void droppedHandle(event).then((handle) => acts.file(file, handle));
  };
  // A program that copies cells may put a picture of them on the clipboard too: then the text is meant.
  const onPaste = (event: ClipboardEvent) => {
    const file = event.clipboardData?.files[0];
    if (!file || event.clipboardData?.getData("text/plain") !== "" || document.querySelector("dialog[open]"))
      return;
    // A photograph goes into the chosen cell.
    if (isPhotograph(file)) return;
    event.preventDefault();
    event.stopPropagation();
    acts.file(file);
  };
  // Before the grid, which takes Page Up and Page Down with any other key held too.
  addEventListener("keydown", onKey, true);
  addEventListener("dragover", onDrag);
  addEventListener("drop", onDrop);
  addEventListener("paste", onPaste, true);
  return () => {
    removeEventListener("keydown", onKey, true);
    removeEventListener("dragover", onDrag);
    removeEventListener("drop", onDrop);
    removeEventListener("paste", onPaste, true);
  };
}
