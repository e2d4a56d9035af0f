/** Moving a block of cells elsewhere, on its page or to another. */
import { type Block, cellAddress, type Place } from "./address.ts";
import { withMarks } from "./cell-marks.ts";
import { everywhere, type, widen } from "./edit.ts";
import { type Area, afterMove, type Move, within } from "./references.ts";
import { type Book, LONGEST, type Page, typedAt } from "./shape.ts";

/**
 * Moves what is typed in a block so that its upper left corner lies at `to`. It is the cells
 * themselves that move, not their texts alone:
 *
 * - Names, notes, settings and the cells of trials go along.
 * - Every reference to a moved cell follows it, on all pages; a range follows when both its corners
 *   moved. A range of which only a part moved stays where it is.
 * - A moved formula goes on pointing at the cells it pointed at; if it comes to another page, their
 *   page is written out.
 * - A cell that was not blank and is overwritten is gone, with its names, its note and its cells of
 *   trials: a reference to it becomes #REF!, because otherwise it would silently mean another value. A
 *   reference to a blank cell stays and means what came there, as when it is typed there; its names
 *   stay too. Its note is put under that of the moved cell, and its settings stay where the moved cell has no settings.
 *
 * Columns keep their headings and kinds. Undefined beyond the most rows and columns of a page.
 */
export function moveBlock(book: Book, from: Block, to: Place): Book {
  const [down, across] = [to.row - from.top, to.column - from.left];
  if (to.page === from.page && down === 0 && across === 0) return book;
  const source: Area = { ...from, title: book.pages[from.page]!.title };
  const target: Area = {
    title: book.pages[to.page]!.title,
    top: to.row,
    left: to.column,
    bottom: from.bottom + down,
    right: from.right + across,
  };
  const isMoved = ({ page, row, column }: Place) => page === from.page && within(row, column, source);
  const isLost = (row: number, column: number) =>
    within(row, column, target) &&
    !isMoved({ page: to.page, row, column }) &&
    typedAt(book, to.page, row, column).trim() !== "";
  const move: Move = { from: source, to: target, isLost };
  const rewritten = everywhere(book, (formula, home, at) =>
    afterMove(formula, home, at && isMoved(at) ? target.title : home, move),
  );
  const cells = cellsOf(from).map(({ row, column }) => ({
    row,
    column,
    typed: typedAt(rewritten, from.page, row, column),
  }));
  const filled = cells.filter(({ typed }) => typed !== "");
  const wide = filled.reduce((most, { column }) => Math.max(most, column + across + 1), 0);
  const typed = type(widen(rewritten, to.page, wide), [
    ...filled.map(({ row, column }) => ({ page: from.page, row, column, typed: "" })),
    ...cells.map((cell) => ({
      page: to.page,
      row: cell.row + down,
      column: cell.column + across,
      typed: cell.typed,
    })),
  ]);
  return withSettings(withNotes(typed, book, from, to, isLost), book, from, to, isLost);
}

const cellsOf = ({ top, left, bottom, right }: Block): { row: number; column: number }[] => {
  const wide = right - left + 1;
  return Array.from({ length: (bottom - top + 1) * wide }, (_, i) => ({
    row: top + Math.floor(i / wide),
    column: left + (i % wide),
  }));
};

/** The settings of the moved cells taken along. */
function withSettings(book: Book, before: Book, from: Block, to: Place, isLost: Move["isLost"]): Book {
  if (!before.pages[from.page]!.cells && !before.pages[to.page]!.cells) return book;
  // As rewritten: choices that stand in cells have followed them.
  const old = book.pages.map(({ cells = {} }) => new Map(Object.entries(cells)));
  const next = old.map((map) => new Map(map));
  const moved = cellsOf(from);
  for (const { row, column } of moved) next[from.page]!.delete(cellAddress(row, column));
  for (const { row, column } of moved) {
    const [r, c] = [row + to.row - from.top, column + to.column - from.left];
    const at = cellAddress(r, c);
    const came = old[from.page]!.get(cellAddress(row, column));
    if (came) next[to.page]!.set(at, came);
    else if (isLost(r, c)) next[to.page]!.delete(at);
  }
  const pages = book.pages.map((page, i) =>
    i === from.page || i === to.page ? withMarks(page, page.notes, Object.fromEntries(next[i]!)) : page,
  );
  return { ...book, pages };
}

/** The notes of the moved cells taken along. */
function withNotes(book: Book, before: Book, from: Block, to: Place, isLost: Move["isLost"]): Book {
  const old = before.pages.map(({ notes }) => new Map(Object.entries(notes)));
  if (old[from.page]!.size + old[to.page]!.size === 0) return book;
  const notes = old.map((map) => new Map(map));
  const cells = cellsOf(from);
  for (const { row, column } of cells) notes[from.page]!.delete(cellAddress(row, column));
  for (const { row, column } of cells) {
    const [r, c] = [row + to.row - from.top, column + to.column - from.left];
    const at = cellAddress(r, c);
    const came = old[from.page]!.get(cellAddress(row, column));
    const stood = isLost(r, c) ? undefined : notes[to.page]!.get(at);
    const both = [came, stood].filter((note) => note !== undefined).join("\n");
    if (both === "") notes[to.page]!.delete(at);
    else notes[to.page]!.set(at, both.length <= LONGEST.note ? both : came!);
  }
  const pages = book.pages.map(
    (page, i): Page =>
      i === from.page || i === to.page ? { ...page, notes: Object.fromEntries(notes[i]!) } : page,
  );
  return { ...book, pages };
}
