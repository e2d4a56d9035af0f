/** Everything a person can do to the order and the look of a book's rows, columns, pages and cells. */
import { phrase, plural } from "../../functions/phrase.ts";
import { type Block, cellAddress, columnLetters, fullAddress, type Place } from "../book/address.ts";
import { type SettingsChange, withSettings } from "../book/cell-marks.ts";
import * as edit from "../book/edit.ts";
import { replacedIn, type Wanted } from "../book/find.ts";
import { readFitting } from "../book/fitting.ts";
import { hiddenRows, withHidden } from "../book/hidden-rows.ts";
import * as reorder from "../book/reorder.ts";
import {
  type Book,
  LONGEST,
  MOST_COLUMNS,
  MOST_FROZEN,
  MOST_ROWS,
  type Page,
  type Stage,
  typedAt,
  WIDTHS,
} from "../book/shape.ts";
import { choicesFault } from "../engine/choices.ts";
import type { Command } from "./store.ts";

const withPage = (book: Book, index: number, page: Page): Book => ({
  ...book,
  pages: book.pages.with(index, page),
});

/** Puts rows before row `to`; formulas, names, notes and trials follow. */
export const moveRows = (page: number, at: number, count: number, to: number): Command => ({
  label: phrase`move ${plural(count, "a row", "# rows")}`,
  edit: (book) => {
    if (at < 0 || to < 0 || Math.max(at + count, to) > MOST_ROWS)
      return { refusal: phrase`rows can be moved to rows 1 to ${MOST_ROWS} of their page only` };
    return reorder.moveRows(book, page, at, count, to);
  },
});

/** Puts columns before column `to`, with headings, kinds and widths; formulas, names, notes and trials follow. */
export const moveColumns = (page: number, at: number, count: number, to: number): Command => ({
  label: phrase`move ${plural(count, "a column", "# columns")}`,
  edit: (book) => {
    if (at < 0 || to < 0 || Math.max(at + count, to) > MOST_COLUMNS)
      return {
        refusal: phrase`columns can be moved to columns A to ${columnLetters(MOST_COLUMNS - 1)} only`,
      };
    return reorder.moveColumns(book, page, at, count, to);
  },
});

/** Puts a page before page `to` of the book, under a stage. */
export const movePage = (page: number, to: number, stage: Stage): Command => ({
  label: phrase`move a page`,
  edit: (book) => reorder.movePage(book, page, Math.min(Math.max(to, 0), book.pages.length), stage),
});

/** Sorts the rows of a block by one of its columns; `value` gives what the cells hold. */
export const sortBlock = (
  block: Block,
  column: number,
  descending: boolean,
  value: (place: Place) => reorder.SortValue,
): Command => ({
  label: phrase`sort ${plural(block.bottom - block.top + 1, "a row", "# rows")} by column ${columnLetters(column)}`,
  edit: (book) => {
    const values = Array.from({ length: block.bottom - block.top + 1 }, (_, i) =>
      value({ page: block.page, row: block.top + i, column }),
    );
    return reorder.sortedRows(book, block, reorder.sortOrder(values, descending));
  },
});

/** Hides rows. They count as before. */
export const hideRows = (page: number, at: number, count: number): Command => ({
  label: phrase`hide ${plural(count, "a row", "# rows")}`,
  edit: (book) => {
    const one = book.pages[page]!;
    const rows = new Set(hiddenRows(one));
    const before = rows.size;
    for (let row = at; row < Math.min(at + count, MOST_ROWS); row += 1) rows.add(row);
    if (rows.size >= Math.max(one.rows.length, at + count))
      return { refusal: phrase`one row of a page has to stay in sight; hide fewer rows` };
    return rows.size === before ? book : withPage(book, page, withHidden(one, rows));
  },
});

/** Shows the hidden rows among these. */
export const showRows = (page: number, at: number, count: number): Command => ({
  label: phrase`show hidden rows`,
  edit: (book) => {
    const one = book.pages[page]!;
    const rows = [...hiddenRows(one)];
    const left = rows.filter((row) => row < at || row >= at + count);
    return left.length === rows.length ? book : withPage(book, page, withHidden(one, left));
  },
});

/** Keeps the first columns in sight when the page is scrolled sideways; 0 lets all of them scroll. */
export const freezeColumns = (page: number, count: number): Command => ({
  label:
    count === 0 ? phrase`let all columns scroll` : phrase`keep column ${columnLetters(count - 1)} in sight`,
  edit: (book) => {
    if (count > MOST_FROZEN)
      return { refusal: phrase`at most ${MOST_FROZEN} columns can be kept in sight, not ${count}` };
    const { frozen = 0, ...rest } = book.pages[page]!;
    return frozen === count ? book : withPage(book, page, count === 0 ? rest : { ...rest, frozen: count });
  },
});

/** Gives columns their widths, in pixels, by their number. */
export const fitColumns = (page: number, widths: ReadonlyMap<number, number>): Command => ({
  label: phrase`fit ${plural(widths.size, "a column", "# columns")} to what they hold`,
  edit: (book) => {
    const one = book.pages[page]!;
    const columns = one.columns.map((column, i) => {
      const width = Math.round(Math.min(WIDTHS[1], Math.max(WIDTHS[0], widths.get(i) ?? column.width)));
      return width === column.width ? column : { ...column, width };
    });
    return columns.every((column, i) => column === one.columns[i])
      ? book
      : withPage(book, page, { ...one, columns });
  },
});

/** Sets how the cells of a block are shown and what they are chosen from; undefined takes a setting away. */
export const setCells = (block: Block, change: SettingsChange): Command => {
  const count = (block.bottom - block.top + 1) * (block.right - block.left + 1);
  return {
    label: phrase`set ${plural(count, "a cell", "# cells")}`,
    edit: (book) => {
      if (count > MOST_SET)
        return {
          refusal: phrase`at most ${MOST_SET} cells are set at once, not ${count}; choose fewer, or set the whole column`,
        };
      if ((change.choices ?? "").length > LONGEST.choices)
        return {
          refusal: phrase`a list of choices has at most ${LONGEST.choices} characters; put it into cells`,
        };
      const fault = change.choices === undefined ? null : choicesFault(book, block.page, change.choices);
      const fitting = change.fitting === undefined ? null : readFitting(change.fitting);
      if (fault) return { refusal: fault };
      if (fitting && "fault" in fitting) return { refusal: fitting.fault };
      if ((change.fitting ?? "").length > LONGEST.fitting)
        return { refusal: phrase`the name of a seam has at most ${LONGEST.fitting} characters` };
      let page = book.pages[block.page]!;
      for (let row = block.top; row <= block.bottom; row += 1)
        for (let column = block.left; column <= block.right; column += 1)
          page = withSettings(page, cellAddress(row, column), change);
      return JSON.stringify(page.cells) === JSON.stringify(book.pages[block.page]!.cells)
        ? book
        : withPage(book, block.page, page);
    },
  };
};

/** Settings stand in the file cell by cell. */
const MOST_SET = 500;

/** Puts a text in the place of another in these cells, as one step. `fault` says why a text can't stand in a cell. */
export const replaceTexts = (
  places: readonly Place[],
  wanted: Wanted,
  by: string,
  fault: (typed: string, page: number) => string | null,
): Command => ({
  label: phrase`replace “${wanted.text.slice(0, 20)}” in ${plural(places.length, "a cell", "# cells")}`,
  edit: (book) => {
    const typings: edit.Typing[] = [];
    for (const place of places) {
      const before = typedAt(book, place.page, place.row, place.column);
      const typed = replacedIn(before, wanted, by);
      if (typed === before) continue;
      const reason = fault(typed, place.page);
      if (reason)
        return {
          refusal: phrase`nothing was replaced: ${fullAddress(book, place)} would be ${typed.slice(0, 60)}, which can't be read (${reason})`,
        };
      typings.push({ ...place, typed });
    }
    const refusal = edit.typingFault(typings);
    return refusal ? { refusal: phrase`nothing was replaced: ${refusal}` } : edit.type(book, typings);
  },
});
