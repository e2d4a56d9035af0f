/** Photographs that are dropped or pasted on a cell. */
import type { Block } from "../../../book/address.ts";
import type { GridView } from "../grid-view.ts";

/** A picture as a camera makes it, as the browser judges it by its name; an SVG is an outline. */
export const isPhotograph = (file: File): boolean => /^image\/(?!svg)/.test(file.type);

/** Opens the form of the cell with the picture that comes to it. Returns how to stop. */
export function listenToPhotographs(
  host: HTMLElement,
  grid: GridView,
  open: (block: Block, file: File) => void,
): () => void {
  const blockAt = (row: number, column: number): Block => ({
    page: grid.index,
    top: row,
    bottom: row,
    left: column,
    right: column,
  });
  const onDrop = (event: DragEvent) => {
    const file = event.dataTransfer?.files[0];
    const cell = event.target instanceof Element ? event.target.closest("td") : null;
    if (!file || !cell || !isPhotograph(file)) return;
    const at = grid.hot.getCoords(cell);
    if (!at || at.row! < 0 || at.col! < 0) return;
    event.preventDefault();
    event.stopPropagation();
    open(blockAt(at.row!, at.col!), file);
  };
  // A program that copies cells may put a picture of them on the clipboard too: then the text is meant.
  const onPaste = (event: ClipboardEvent) => {
    const file = event.clipboardData?.files[0];
    if (!file || !isPhotograph(file) || event.clipboardData?.getData("text/plain") !== "") return;
    const block = grid.hot.isListening() && !grid.hot.getActiveEditor()?.isOpened() ? grid.block() : null;
    if (!block) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    open(blockAt(block.top, block.left), file);
  };
  host.addEventListener("drop", onDrop);
  document.addEventListener("paste", onPaste, true);
  return () => {
    host.removeEventListener("drop", onDrop);
    document.removeEventListener("paste", onPaste, true);
  };
}
