/** What a person can do to the order and the look of a book's rows, columns, pages and cells. */
import { phrase, plural } from "../../functions/phrase.ts";
import { columnLetters } from "../book/address.ts";
import { hiddenRows, withHidden } from "../book/hidden-rows.ts";
import * as reorder from "../book/reorder.ts";
import {
  type Book,
  MOST_COLUMNS,
  MOST_FROZEN,
  MOST_ROWS,
  type Page,
  type Stage,
  WIDTHS,
} from "../book/shape.ts";
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
