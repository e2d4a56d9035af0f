/** Edits of a book, each a pure step from one book to the next. */
import { phrase } from "../../functions/phrase.ts";
import { cellAddress, columnLetters, columnNumber, findPlace, type Place } from "./address.ts";
import { marksMoved } from "./cell-marks.ts";
import { EXAMPLE_NOTE } from "./example-note.ts";
import { isFormula } from "./formula.ts";
import { rowsOfRuns, withHidden } from "./hidden-rows.ts";
import { type Axis, afterRemoval, afterRename, afterShift } from "./references.ts";
import {
  BLANK_COLUMN,
  type Book,
  type Column,
  LONGEST,
  MOST_COLUMNS,
  MOST_ROWS,
  type Page,
} from "./shape.ts";

/** A cell and what is to be typed in it. */
export interface Typing extends Place {
  readonly typed: string;
}

const withPage = (book: Book, index: number, page: Page): Book => ({
  ...book,
  pages: book.pages.map((one, i) => (i === index ? page : one)),
});

/** Why these can't be typed in a book, or null. */
export function typingFault(typings: readonly Typing[]): string | null {
  for (const { row, column, typed } of typings) {
    if (row >= MOST_ROWS) return phrase`a page has at most ${MOST_ROWS} rows`;
    if (column >= MOST_COLUMNS) return phrase`a page has at most ${MOST_COLUMNS} columns`;
    if (typed.length > LONGEST.typed)
      return phrase`a cell holds at most ${LONGEST.typed} characters, not ${typed.length}`;
  }
  return null;
}

/** Types into cells. Cells beyond the rows are made, and what is typed over an example is no example. */
export function type(book: Book, typings: readonly Typing[]): Book {
  const byPage = byPageOf(typings);
  return [...byPage].reduce((next, [index, list]) => {
    const page = next.pages[index]!;
    const rows = [...page.rows];
    let { notes } = page;
    const fresh = new Set<number>();
    for (const { row, column, typed } of list) {
      const address = cellAddress(row, column);
      if (notes[address] === EXAMPLE_NOTE) {
        notes = { ...notes };
        delete (notes as Record<string, string>)[address];
      }
      if ((rows[row]?.[column] ?? "") === typed) continue;
      while (rows.length <= row) rows.push([]);
      if (!fresh.has(row)) rows[row] = [...rows[row]!];
      fresh.add(row);
      const cells = rows[row] as string[];
      while (cells.length <= column) cells.push("");
      cells[column] = typed;
    }
    return fresh.size === 0 && notes === page.notes ? next : withPage(next, index, { ...page, rows, notes });
  }, book);
}

function byPageOf(typings: readonly Typing[]): Map<number, Typing[]> {
  const map = new Map<number, Typing[]>();
  for (const typing of typings) {
    const list = map.get(typing.page) ?? [];
    list.push(typing);
    map.set(typing.page, list);
  }
  return map;
}

/** `home` is the title of the formula's page, `at` its cell; "" and null for an address by itself. */
type Change = (formula: string, home: string, at: Place | null) => string;

/**
 * Rewrites every formula of the book, and with them the addresses of names and trials; those
 * whose cells are gone go too. What does not change stays the same object.
 */
export function everywhere(book: Book, change: Change): Book {
  const address = (text: string) => change(`=${text}`, "", null).slice(1);
  const pages = sameOr(
    book.pages,
    book.pages.map((page, index) => {
      const old = page.names;
      const names = old && withAddresses(old, address);
      const typed = (text: string, row: number, column: number) =>
        isFormula(text) ? change(text, page.title, { page: index, row, column }) : text;
      const rows = sameOr(
        page.rows,
        page.rows.map((row, r) =>
          sameOr(
            row,
            row.map((text, column) => typed(text, r, column)),
          ),
        ),
      );
      const next = choicesRewritten(page, (text) => change(text, page.title, null));
      if (rows === page.rows && names === old) return next;
      const { names: _, ...rest } = next;
      return { ...rest, rows, ...(names && Object.keys(names).length > 0 && { names }) };
    }),
  );
  const trials = book.trials.map((trial) => {
    const cells = Object.entries(trial.cells).map(([at, typed]) => {
      const place = findPlace(book, at);
      const home = book.pages[place?.page ?? -1]?.title ?? "";
      return { at, to: address(at), typed: isFormula(typed) ? change(typed, home, place) : typed };
    });
    const stay = cells.every(({ at, to, typed }) => at === to && trial.cells[at] === typed);
    if (stay) return trial;
    // Where a cell came to lie on another that the trial types into, the one that came counts.
    const came = new Set(cells.flatMap(({ at, to }) => (at === to ? [] : [to])));
    const left = cells.filter(({ at, to }) => to !== LOST && (at !== to || !came.has(at)));
    return { ...trial, cells: Object.fromEntries(left.map(({ to, typed }) => [to, typed])) };
  });
  return {
    ...book,
    pages,
    names: withAddresses(book.names, address),
    trials: sameOr(book.trials, trials),
  };
}

/** The page with the choices that stand in cells rewritten; the same object when nothing changes. */
function choicesRewritten(page: Page, change: (text: string) => string): Page {
  const one = <T extends { readonly choices?: string }>(item: T): T => {
    if (item.choices === undefined || !isFormula(item.choices)) return item;
    const choices = change(item.choices);
    return choices === item.choices ? item : { ...item, choices };
  };
  const columns = sameOr(page.columns, page.columns.map(one));
  const entries = Object.entries(page.cells ?? {});
  const cells = entries.map(([address, settings]) => [address, one(settings)] as const);
  const stay = cells.every(([, settings], i) => settings === entries[i]![1]);
  if (columns === page.columns && stay) return page;
  return { ...page, columns, ...(!stay && { cells: Object.fromEntries(cells) }) };
}

/** Names with their addresses changed, without those whose cells are gone or lie beyond every page; the old ones when nothing changes. */
function withAddresses(names: Book["names"], change: (address: string) => string): Book["names"] {
  const next = Object.entries(names).map(([name, at]) => [name, withinRows(change(at))] as const);
  if (next.every(([name, at]) => names[name] === at)) return names;
  return Object.fromEntries(next.filter(([, at]) => at !== LOST));
}

/** An address of at most the rows and columns that a page has; a list is cut there, a cell beyond is lost. */
function withinRows(address: string): string {
  const [, page, column, row] = /^(.*!)\$?([A-Za-z]+)\$?(\d+)$/.exec(address) ?? [];
  const past = (letters: string, figures: string) =>
    columnNumber(letters) >= MOST_COLUMNS || Number(figures) > MOST_ROWS;
  const list = /^(.*!)\$?([A-Za-z]+)\$?(\d+):\$?([A-Za-z]+)\$?(\d+)$/.exec(address);
  if (!list) return page !== undefined && past(column!, row!) ? LOST : address;
  const [, home, left, top, right, bottom] = list as unknown as [
    string,
    string,
    string,
    string,
    string,
    string,
  ];
  if (past(left, top)) return LOST;
  if (!past(right, bottom)) return address;
  const last = columnLetters(Math.min(columnNumber(right), MOST_COLUMNS - 1));
  return `${home}${left}${top}:${last}${Math.min(Number(bottom), MOST_ROWS)}`;
}

/** The old list when the new one holds the very same. */
const sameOr = <T>(old: readonly T[], next: readonly T[]): readonly T[] =>
  old.length === next.length && next.every((one, i) => one === old[i]) ? old : next;

const LOST = "#REF!";

function shifted(book: Book, index: number, axis: Axis, at: number, count: number): Book {
  const { title } = book.pages[index]!;
  const change: Change = (formula, home) => afterShift(formula, home, title, axis, at, count);
  const next = everywhere(book, change);
  const page = marksMoved(next.pages[index]!, (address) => {
    const moved = change(`=${address}`, title, null).slice(1);
    return moved === LOST ? null : moved;
  });
  const hidden = (page.hidden ?? []).map((run) => change(`=${run}`, title, null).slice(1));
  return withPage(
    next,
    index,
    page.hidden ? withHidden(page, rowsOfRuns(hidden.filter((run) => run !== LOST))) : page,
  );
}

/** Inserts `count` blank rows before row `at`. */
export function insertRows(book: Book, index: number, at: number, count: number): Book {
  const next = shifted(book, index, "row", at, count);
  const page = next.pages[index]!;
  if (at >= page.rows.length) return next;
  return withPage(next, index, {
    ...page,
    rows: page.rows.toSpliced(at, 0, ...Array.from({ length: count }, () => [])),
  });
}

/** Deletes `count` rows from row `at` on. */
export function removeRows(book: Book, index: number, at: number, count: number): Book {
  const next = shifted(book, index, "row", at, -count);
  const page = next.pages[index]!;
  return withPage(next, index, { ...page, rows: page.rows.toSpliced(at, count) });
}

/** Adds columns after the last until there are `wanted`. Nothing moves: formulas may name cells out there already. */
export function widen(book: Book, index: number, wanted: number): Book {
  const page = book.pages[index]!;
  const more = wanted - page.columns.length;
  if (more <= 0) return book;
  return withPage(book, index, { ...page, columns: [...page.columns, ...Array(more).fill(BLANK_COLUMN)] });
}

/** Inserts `count` blank columns before column `at`. */
export function insertColumns(book: Book, index: number, at: number, count: number): Book {
  const next = shifted(book, index, "column", at, count);
  const page = next.pages[index]!;
  return withPage(next, index, {
    ...page,
    columns: page.columns.toSpliced(at, 0, ...Array<Column>(count).fill(BLANK_COLUMN)),
    rows: page.rows.map((row) =>
      row.length <= at ? row : row.toSpliced(at, 0, ...Array<string>(count).fill("")),
    ),
  });
}

/** Deletes `count` columns from column `at` on; the last one of a page stays. */
export function removeColumns(book: Book, index: number, at: number, count: number): Book {
  const width = book.pages[index]!.columns.length;
  const gone = Math.min(count, width - at, width - 1);
  if (gone <= 0) return book;
  const next = shifted(book, index, "column", at, -gone);
  const page = next.pages[index]!;
  return withPage(next, index, {
    ...page,
    columns: page.columns.toSpliced(at, gone),
    rows: page.rows.map((row) => (row.length <= at ? row : row.toSpliced(at, gone))),
  });
}

/** New fields of a column; choices that are undefined are taken away. */
export type ColumnChange = Partial<Omit<Column, "choices">> & { readonly choices?: string | undefined };

function changed(column: Column, change: ColumnChange): Column {
  const { choices, ...rest } = { ...column, ...change };
  return choices === undefined ? rest : { ...rest, choices };
}

/** Changes a column's heading, kind, width or choices. */
export function changeColumn(book: Book, index: number, column: number, change: ColumnChange): Book {
  const page = book.pages[index]!;
  const columns = page.columns.map((one, i) => (i === column ? changed(one, change) : one));
  return withPage(book, index, { ...page, columns });
}

export function addPage(book: Book, page: Page, at = book.pages.length): Book {
  return { ...book, pages: book.pages.toSpliced(at, 0, page) };
}

/** Deletes a page. Formulas that pointed at it then say that it is missing; names on it go. */
export function removePage(book: Book, index: number): Book {
  if (book.pages.length === 1) return book;
  const { title } = book.pages[index]!;
  const next = everywhere(book, (formula, home) => afterRemoval(formula, home, title));
  return { ...next, pages: next.pages.toSpliced(index, 1) };
}

/** Gives a page another title; formulas and names follow. */
export function renamePage(book: Book, index: number, title: string): Book {
  const from = book.pages[index]!.title;
  const next = everywhere(book, (formula) => afterRename(formula, from, title));
  return withPage(next, index, { ...next.pages[index]!, title });
}

/** Sets or, with "", removes the note of a cell. */
export function noteCell(book: Book, index: number, address: string, note: string): Book {
  const page = book.pages[index]!;
  const notes = Object.fromEntries(Object.entries(page.notes).filter(([one]) => one !== address));
  return withPage(book, index, { ...page, notes: note === "" ? notes : { ...notes, [address]: note } });
}
