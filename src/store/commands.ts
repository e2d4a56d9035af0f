/** Everything a person can do to a book, each as a command with a name for the history. */

import type { Decimal } from "../../functions/decimal.ts";
import type { TapeMark } from "../../functions/fractions.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { addPages } from "../book/add-pages.ts";
import { type Block, cellAddress, columnLetters, fullAddress, type Place } from "../book/address.ts";
import { copyPage as copyOfPage, withoutFittings } from "../book/copy-page.ts";
import * as edit from "../book/edit.ts";
import { isFormula } from "../book/formula.ts";
import { moveBlock } from "../book/move.ts";
import { photographsFault } from "../book/photographs.ts";
import { copied } from "../book/references.ts";
import {
  type Book,
  cellsIn,
  LONGEST,
  MOST_CELLS,
  MOST_COLUMNS,
  MOST_PAGES,
  MOST_ROWS,
  type Page,
  typedAt,
} from "../book/shape.ts";
import { choicesFault } from "../engine/choices.ts";
import { showDecimal } from "../engine/show-decimal.ts";
import type { Command } from "./store.ts";

/** Types into cells: one step whatever their number. */
export function typeCells(typings: readonly edit.Typing[]): Command {
  const first = typings[0];
  return {
    label:
      typings.length === 1 && first
        ? phrase`type in ${cellAddress(first.row, first.column)}`
        : phrase`type in ${typings.length} cells`,
    edit: (book) => {
      const refusal = edit.typingFault(typings);
      if (refusal) return { refusal };
      const next = edit.type(withColumns(book, typings), typings);
      const fault = typings.length > MANY ? cellsFault(book, next) : null;
      return fault ? { refusal: fault } : next;
    },
  };
}

/** When more cells than this are typed into at once, the cells of the book are counted before it is kept. */
const MANY = 1000;

/** A book that is too large already may still be made smaller. */
function cellsFault(book: Book, next: Book): string | null {
  const count = cellsIn(next);
  if (count <= MOST_CELLS || count <= cellsIn(book)) return null;
  const said = (cells: number) => cells.toLocaleString("en");
  return phrase`a book holds at most ${said(MOST_CELLS)} cells, and this would make it ${said(count)}; paste a part of it, or into a book of its own`;
}

/** Columns are added when something is typed beyond the last. */
function withColumns(book: Book, typings: readonly edit.Typing[]): Book {
  const wanted = new Map<number, number>();
  for (const { page, column } of typings) wanted.set(page, Math.max(wanted.get(page) ?? 0, column + 1));
  return [...wanted].reduce((next, [page, count]) => edit.widen(next, page, count), book);
}

/** Puts a block of texts down with its upper left corner at a place. */
export function pasteBlock(at: Place, block: readonly (readonly string[])[]): Command {
  const typings = block.flatMap((row, r) =>
    row.map((typed, c) => ({ page: at.page, row: at.row + r, column: at.column + c, typed })),
  );
  const typing = typeCells(typings);
  const [bottom, right] = [at.row + block.length, at.column + Math.max(0, ...block.map((row) => row.length))];
  return {
    label: phrase`paste ${plural(typings.length, "a cell", "# cells")}`,
    edit: (book) =>
      bottom > MOST_ROWS || right > MOST_COLUMNS
        ? {
            refusal: phrase`the pasted block would end at ${cellAddress(bottom - 1, right - 1)}, and a page has at most ${MOST_ROWS} rows and ${MOST_COLUMNS} columns; paste a part of it`,
          }
        : typing.edit(book),
  };
}

/** What is typed in a block, moved as when its upper left corner is put at `to`; repeated to fill `target`. */
export function copyOf(book: Book, from: Block, to: Place, target?: Block): edit.Typing[] {
  const rows = from.bottom - from.top + 1;
  const columns = from.right - from.left + 1;
  const tall = target ? target.bottom - to.row + 1 : rows;
  const wide = target ? target.right - to.column + 1 : columns;
  return Array.from({ length: tall * wide }, (_, i) => {
    const row = to.row + Math.floor(i / wide);
    const column = to.column + (i % wide);
    const source = {
      row: from.top + ((((row - to.row) % rows) + rows) % rows),
      column: from.left + ((column - to.column) % columns),
    };
    const typed = typedAt(book, from.page, source.row, source.column);
    return {
      page: to.page,
      row,
      column,
      typed: isFormula(typed) ? copied(typed, row - source.row, column - source.column) : typed,
    };
  });
}

/** Moves a block with its names, its notes and every reference to it: see `moveBlock`. */
export const moveCells = (from: Block, to: Place): Command => {
  const count = (from.bottom - from.top + 1) * (from.right - from.left + 1);
  return {
    label: phrase`move ${plural(count, "a cell", "# cells")} to ${cellAddress(to.row, to.column)}`,
    edit: (book) => {
      const corner = {
        ...to,
        row: to.row + from.bottom - from.top,
        column: to.column + from.right - from.left,
      };
      const fault = edit.typingFault([{ ...corner, typed: "" }]);
      return fault
        ? { refusal: phrase`${fault}; these cells would end at ${fullAddress(book, corner)}` }
        : moveBlock(book, from, to);
    },
  };
};

export const insertRows = (page: number, at: number, count: number): Command => ({
  label: phrase`insert ${plural(count, "a row", "# rows")}`,
  edit: (book) =>
    book.pages[page]!.rows.length + count > MOST_ROWS
      ? { refusal: phrase`a page has at most ${MOST_ROWS} rows` }
      : edit.insertRows(book, page, at, count),
});

export const removeRows = (page: number, at: number, count: number): Command => ({
  label: phrase`delete ${plural(count, "a row", "# rows")}`,
  edit: (book) => edit.removeRows(book, page, at, count),
});

export const insertColumns = (page: number, at: number, count: number): Command => ({
  label: phrase`insert ${plural(count, "a column", "# columns")}`,
  edit: (book) =>
    book.pages[page]!.columns.length + count > MOST_COLUMNS
      ? { refusal: phrase`a page has at most ${MOST_COLUMNS} columns` }
      : edit.insertColumns(book, page, at, count),
});

export const removeColumns = (page: number, at: number, count: number): Command => ({
  label: phrase`delete ${plural(count, "a column", "# columns")}`,
  edit: (book) => edit.removeColumns(book, page, at, count),
});

export const changeColumn = (page: number, column: number, change: edit.ColumnChange): Command => ({
  label: phrase`change a column`,
  edit: (book) => {
    const fault = change.choices === undefined ? null : choicesFault(book, page, change.choices);
    return fault ? { refusal: fault } : edit.changeColumn(book, page, column, change);
  },
});

/** Lets the numbers count that a column of text has kept as texts; its words stay words. */
export const countColumn = (page: number, column: number): Command => ({
  ...changeColumn(page, column, { kind: "any" }),
  label: phrase`calculate with column ${columnLetters(column)}`,
});

/** Writes the note of a cell; "" deletes it. */
export const noteCell = (page: number, address: string, note: string): Command => ({
  label: note === "" ? phrase`delete the note on ${address}` : phrase`note on ${address}`,
  edit: (book) => {
    if (note === (book.pages[page]!.notes[address] ?? "")) return book;
    return note.length > LONGEST.note
      ? { refusal: phrase`a note holds at most ${LONGEST.note} characters, not ${note.length}; shorten it` }
      : edit.noteCell(book, page, address, note);
  },
});

const titleFault = (book: Book, title: string, except = -1): string | null => {
  if (!/\S/.test(title)) return phrase`a page needs a title`;
  if (/[[\]:*?/\\']/.test(title) || title.length > 80)
    return phrase`a page's title has at most 80 letters and must not contain any of [ ] : * ? / \\ '`;
  const taken = book.pages.some(
    (page, i) => i !== except && page.title.toLowerCase() === title.toLowerCase(),
  );
  return taken ? phrase`there is already a page called "${title}"` : null;
};

export const addPage = (page: Page, at?: number): Command => ({
  label: phrase`add the page ${page.title}`,
  edit: (book) => {
    if (book.pages.length >= MOST_PAGES) return { refusal: phrase`a book has at most ${MOST_PAGES} pages` };
    const fault = titleFault(book, page.title);
    return fault ? { refusal: fault } : edit.addPage(book, page, at);
  },
});

/** Adds a garment's pages to the book; `label` is added to the names of its pages and cells that the book already has. */
export const addGarment = (garment: Book, label: string): Command => ({
  label: phrase`add ${garment.title}`,
  edit: (book) => {
    const count = book.pages.length + garment.pages.length;
    if (count > MOST_PAGES)
      return { refusal: phrase`a book has at most ${MOST_PAGES} pages, and this would make it ${count}` };
    const next = addPages(book, garment, label);
    const fault = cellsFault(book, next);
    return fault ? { refusal: fault } : next;
  },
});

/**
 * Copies a page with its names, for another wearer: see `copyPage` of the book. `wearer` is what the copy has
 * in the cell that names the wearer. A copy for another wearer follows no fittings: those in the log are the first wearer's.
 */
export const copyPage = (
  page: number,
  title: string,
  wearer?: { readonly row: number; readonly column: number; readonly typed: string },
  isForAnother = wearer !== undefined,
): Command => ({
  label: phrase`copy a page as ${title}`,
  edit: (book) => {
    if (!book.pages[page]) return { refusal: phrase`there is no such page to copy` };
    if (book.pages.length >= MOST_PAGES) return { refusal: phrase`a book has at most ${MOST_PAGES} pages` };
    const fault = titleFault(book, title);
    if (fault) return { refusal: fault };
    const copy = copyOfPage(book, page, title);
    const named = wearer ? edit.type(copy, [{ page: page + 1, ...wearer }]) : copy;
    const next = isForAnother ? withoutFittings(named, page + 1) : named;
    const many = cellsFault(book, next) ?? photographsFault(book, next);
    return many ? { refusal: many } : next;
  },
});

export const removePage = (page: number): Command => ({
  label: phrase`delete a page`,
  edit: (book) =>
    book.pages.length === 1
      ? { refusal: phrase`a book keeps at least one page` }
      : edit.removePage(book, page),
});

export const renamePage = (page: number, title: string): Command => ({
  label: phrase`rename a page to ${title}`,
  edit: (book) => {
    const fault = titleFault(book, title, page);
    return fault ? { refusal: fault } : edit.renamePage(book, page, title);
  },
});

export const retitle = (title: string): Command => ({
  label: phrase`rename the book`,
  edit: (book) => (/\S/.test(title) ? { ...book, title } : { refusal: phrase`a book needs a title` }),
});

/** Shows numbers with a decimal point or comma; typed texts are rewritten where they would be read differently. */
export const changeDecimal = (decimal: Decimal): Command => ({
  label: phrase`show a decimal ${decimal}`,
  edit: (book) => showDecimal(book, decimal),
});

/** Shows lengths to another finest mark of the tape. */
export const changeMark = (mark: TapeMark): Command => ({
  label: phrase`round to ${mark}`,
  edit: (book) => (mark === book.mark ? book : { ...book, mark }),
});
