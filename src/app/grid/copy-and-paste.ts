/**
 * Copy, cut and paste at the grid: plain text and tables with other programs; among our own cells a copied
 * block brings its formulas along, and a cut one is moved as `moveBlock` says.
 */
import { phrase, plural } from "../../../functions/phrase.ts";
import type { Block, Place } from "../../book/address.ts";
import { typedAt } from "../../book/shape.ts";
import { copyOf, moveCells, pasteBlock, typeCells } from "../../store/commands.ts";
import { withPhotographs } from "../../store/photograph.ts";
import { reasonOf } from "../faults/in-time.ts";
import { cellsOf, saidIfMany } from "../progress/large-steps.ts";
import { blockText, repeated } from "./clipboard.ts";
import type { Clip, EditSession } from "./edit-session.ts";
import type { GridView } from "./grid-view.ts";
import { htmlTable, tableHtml } from "./html-table.ts";
import { clipboardReader, loadClipboardReader } from "./late-paste.ts";

/** Takes the clipboard's events while the grid has the keyboard and no text is being edited. Returns how to stop. */
export function listenToClipboard(grid: GridView, session: EditSession): () => void {
  const ours = () => grid.hot.isListening() && !grid.hot.getActiveEditor()?.isOpened();
  const copy = (event: ClipboardEvent) => {
    const block = ours() ? grid.block() : null;
    if (!block || !event.clipboardData) return;
    event.preventDefault();
    const shown = rowsOf(block, (row, column) => grid.view(row, column).shown);
    const text = blockText(shown);
    const cut = event.type === "cut";
    session.clip = { book: cut ? session.store.book : session.store.shown, block, text, cut };
    event.clipboardData.setData("text/plain", text);
    event.clipboardData.setData("text/html", tableHtml(shown));
  };
  const paste = (event: ClipboardEvent) => {
    const block = ours() ? grid.block() : null;
    const text = event.clipboardData?.getData("text/plain");
    if (!block || text === undefined) return;
    event.preventDefault();
    const html = event.clipboardData?.getData("text/html") ?? "";
    put(grid, session, text.replaceAll("\r\n", "\n"), html, block);
  };
  const letBe = ({ key }: KeyboardEvent) => {
    if (key === "Escape" && session.clip?.cut && ours()) session.clip = { ...session.clip, cut: false };
  };
  document.addEventListener("keydown", letBe, true);
  document.addEventListener("copy", copy);
  document.addEventListener("cut", copy);
  document.addEventListener("paste", paste);
  return () => {
    document.removeEventListener("keydown", letBe, true);
    document.removeEventListener("copy", copy);
    document.removeEventListener("cut", copy);
    document.removeEventListener("paste", paste);
  };
}

function rowsOf(block: Block, cell: (row: number, column: number) => string): string[][] {
  return Array.from({ length: block.bottom - block.top + 1 }, (_, r) =>
    Array.from({ length: block.right - block.left + 1 }, (_, c) => cell(block.top + r, block.left + c)),
  );
}

/** Puts a text from the clipboard down at the chosen block, as one step. */
function put(grid: GridView, session: EditSession, text: string, html: string, chosen: Block): void {
  const own = session.clip?.text === text ? session.clip : null;
  const at = { page: chosen.page, row: chosen.top, column: chosen.left };
  if (own && session.cutBlock) {
    move(grid, session, own, at);
    return;
  }
  if (own) {
    said(session, cellsOf(own.block), chosen, () => putCopy(grid, session, own, chosen));
    return;
  }
  const refuse = (refusal: string) => session.run({ label: "paste", edit: () => ({ refusal }) }, at);
  if (text.length > MOST_TEXT) {
    const said = Math.round(text.length / 1e6);
    refuse(
      phrase`the clipboard holds ${said} million characters, more than a page can take; paste a part of it`,
    );
    return;
  }
  const reader = clipboardReader();
  if (!reader) {
    loadClipboardReader().then(
      () => put(grid, session, text, html, chosen),
      (fault) =>
        refuse(
          phrase`what reads the clipboard could not be loaded (${reasonOf(fault)}): see that the server is running, then paste again`,
        ),
    );
    return;
  }
  const { cells, doubt, other } = reader.understood(text, htmlTable(html));
  const paste = (block: string[][]): boolean => putTexts(grid, session, block, chosen);
  said(session, cells.length * (cells[0]?.length ?? 0), chosen, () => {
    if (!paste(cells) || doubt === null) return;
    session.pasted = {
      book: session.store.book,
      doubt,
      other: other && { label: other.label, paste: () => paste(other.cells) },
    };
  });
}

/** Pastes at once, or a large block once the page has said so; a block may be repeated over the chosen cells. */
function said(session: EditSession, count: number, chosen: Block, paste: () => void): void {
  const cells = Math.max(count, cellsOf(chosen));
  saidIfMany(session.store, cells, () => phrase`Pasting ${plural(cells, "# cell", "# cells")}`, paste);
}

/** The longest text of the clipboard that is read, in characters. */
const MOST_TEXT = 50_000_000;

/** Where a block comes to when it is pasted at the chosen one: repeated to fill it where it goes in evenly. */
function targetOf(chosen: Block, block: readonly (readonly string[])[]) {
  const cells = repeated(block, chosen.bottom - chosen.top + 1, chosen.right - chosen.left + 1);
  if (cells.length === 0) return null;
  const target: Block = {
    page: chosen.page,
    top: chosen.top,
    left: chosen.left,
    bottom: chosen.top + cells.length - 1,
    right: chosen.left + cells[0]!.length - 1,
  };
  return { cells, target };
}

const cornerOf = ({ page, top, left }: Block): Place => ({ page, row: top, column: left });

/** Puts texts down at the chosen block, as one step. */
function putTexts(grid: GridView, session: EditSession, block: string[][], chosen: Block): boolean {
  const put = targetOf(chosen, block);
  if (!put) return false;
  const at = cornerOf(chosen);
  if (!session.run(pasteBlock(at, put.cells), at)) return false;
  grid.selectBlock(put.target);
  return true;
}

/** Puts a copied block down with its formulas, as one step. */
function putCopy(grid: GridView, session: EditSession, clip: Clip, chosen: Block): void {
  const put = targetOf(chosen, typedBlock(clip));
  if (!put) return;
  const at = cornerOf(chosen);
  const command = {
    ...typeCells(copyOf(clip.book, clip.block, at, put.target)),
    label: phrase`paste copied cells`,
  };
  if (session.run(withPhotographs(command, clip.book, clip.block, put.target), at))
    grid.selectBlock(put.target);
}

/** Moves what was cut. It is no longer cut then: pasted once more, it is copied from where it came to. */
function move(grid: GridView, session: EditSession, clip: Clip, to: Place): void {
  const { top, left, bottom, right } = clip.block;
  const block = {
    ...to,
    top: to.row,
    left: to.column,
    bottom: to.row + bottom - top,
    right: to.column + right - left,
  };
  const cells = cellsOf(block);
  saidIfMany(
    session.store,
    cells,
    () => phrase`Moving ${plural(cells, "# cell", "# cells")}`,
    () => {
      if (!session.run(moveCells(clip.block, to), to)) return;
      session.clip = { book: session.store.book, block, text: clip.text, cut: false };
      grid.selectBlock(block);
    },
  );
}

const typedBlock = ({ book, block }: Clip): string[][] =>
  rowsOf(block, (row, column) => typedAt(book, block.page, row, column));
