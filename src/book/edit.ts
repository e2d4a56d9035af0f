/** Edits of a book, each a pure step from one book to the next. */
import { fullAddress, type Place } from "./address.ts";
import { isFormula, tokens } from "./formula.ts";
import { type Axis, afterRename, afterShift } from "./references.ts";
import type { Book, Column, Page } from "./shape.ts";

/** A cell and what is to be typed in it. */
export interface Typing extends Place {
  readonly typed: string;
}

const withPage = (book: Book, index: number, page: Page): Book => ({
  ...book,
  pages: book.pages.map((one, i) => (i === index ? page : one)),
});

/** Types into cells. Cells beyond the rows are made. */
export function type(book: Book, typings: readonly Typing[]): Book {
  const byPage = byPageOf(typings);
  return [...byPage].reduce((next, [index, list]) => {
    const page = next.pages[index]!;
    const rows = [...page.rows];
    const fresh = new Set<number>();
    for (const { row, column, typed } of list) {
      if ((rows[row]?.[column] ?? "") === typed) continue;
      while (rows.length <= row) rows.push([]);
      if (!fresh.has(row)) rows[row] = [...rows[row]!];
      fresh.add(row);
      const cells = rows[row] as string[];
      while (cells.length <= column) cells.push("");
      cells[column] = typed;
    }
    return fresh.size === 0 ? next : withPage(next, index, { ...page, rows });
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

/** Rewrites every formula of the book; rows without a change stay the same object. */
function rewritten(book: Book, change: (formula: string, home: string) => string): Book {
  const pages = book.pages.map((page) => {
    let touched = false;
    const rows = page.rows.map((row) => {
      const next = row.map((typed) => (isFormula(typed) ? change(typed, page.title) : typed));
      if (next.every((typed, i) => typed === row[i])) return row;
      touched = true;
      return next;
    });
    return touched ? { ...page, rows } : page;
  });
  const same = pages.every((page, i) => page === book.pages[i]);
  return same ? book : { ...book, pages };
}

/** Named cells and trials follow their cells; a name whose cell is gone goes too. */
function withAddresses(book: Book, change: (address: string) => string): Book {
  const follow = <V>(
    entries: readonly (readonly [string, V])[],
    at: (entry: readonly [string, V]) => string,
  ) =>
    entries
      .map((entry) => [entry, change(`=${at(entry)}`).slice(1)] as const)
      .filter(([, address]) => !address.includes("#REF!"));
  const names = Object.fromEntries(
    follow(Object.entries(book.names), ([, address]) => address).map(([[name], address]) => [name, address]),
  );
  const trials = book.trials.map((trial) => ({
    ...trial,
    cells: Object.fromEntries(
      follow(Object.entries(trial.cells), ([address]) => address).map(([[, typed], address]) => [
        address,
        typed,
      ]),
    ),
  }));
  return { ...book, names, trials };
}

function shifted(book: Book, index: number, axis: Axis, at: number, count: number): Book {
  const { title } = book.pages[index]!;
  const change = (formula: string, home: string) => afterShift(formula, home, title, axis, at, count);
  const notes: Record<string, string> = {};
  for (const [address, note] of Object.entries(book.pages[index]!.notes)) {
    const moved = change(`=${address}`, title).slice(1);
    if (!moved.includes("#REF!")) notes[moved] = note;
  }
  const next = withAddresses(rewritten(book, change), (address) => change(address, ""));
  return withPage(next, index, { ...next.pages[index]!, notes });
}

/** Puts `count` blank rows in before row `at`. */
export function insertRows(book: Book, index: number, at: number, count: number): Book {
  const next = shifted(book, index, "row", at, count);
  const page = next.pages[index]!;
  if (at >= page.rows.length) return next;
  return withPage(next, index, {
    ...page,
    rows: page.rows.toSpliced(at, 0, ...Array.from({ length: count }, () => [])),
  });
}

/** Takes out `count` rows from row `at` on. */
export function removeRows(book: Book, index: number, at: number, count: number): Book {
  const next = shifted(book, index, "row", at, -count);
  const page = next.pages[index]!;
  return withPage(next, index, { ...page, rows: page.rows.toSpliced(at, count) });
}

/** Puts `count` blank columns in before column `at`. */
export function insertColumns(book: Book, index: number, at: number, count: number): Book {
  const next = shifted(book, index, "column", at, count);
  const page = next.pages[index]!;
  const column: Column = { heading: "", kind: "any", width: 110 };
  return withPage(next, index, {
    ...page,
    columns: page.columns.toSpliced(at, 0, ...Array.from({ length: count }, () => column)),
    rows: page.rows.map((row) =>
      row.length <= at ? row : row.toSpliced(at, 0, ...Array.from({ length: count }, () => "")),
    ),
  });
}

/** Takes out `count` columns from column `at` on; the last one of a page stays. */
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

/** Changes a column's heading, kind or width. */
export function changeColumn(book: Book, index: number, column: number, change: Partial<Column>): Book {
  const page = book.pages[index]!;
  const columns = page.columns.map((one, i) => (i === column ? { ...one, ...change } : one));
  return withPage(book, index, { ...page, columns });
}

export function addPage(book: Book, page: Page, at = book.pages.length): Book {
  return { ...book, pages: book.pages.toSpliced(at, 0, page) };
}

/** Takes a page out. Formulas that pointed at it then say that it is missing; names on it go. */
export function removePage(book: Book, index: number): Book {
  if (book.pages.length === 1) return book;
  const lost = book.pages[index]!;
  const far = 1e7;
  const change = (formula: string, home: string) => afterShift(formula, home, lost.title, "row", 0, -far);
  const next = withAddresses(rewritten(book, change), (address) => change(address, ""));
  return { ...next, pages: next.pages.toSpliced(index, 1) };
}

/** Gives a page another title; formulas and names follow. */
export function renamePage(book: Book, index: number, title: string): Book {
  const from = book.pages[index]!.title;
  const next = withAddresses(
    rewritten(book, (formula) => afterRename(formula, from, title)),
    (address) => afterRename(address, from, title),
  );
  return withPage(next, index, { ...next.pages[index]!, title });
}

/** Names a cell, renames it (formulas follow) or, with "", takes its name away. */
export function nameCell(book: Book, place: Place, name: string): Book {
  const address = fullAddress(book, place);
  const old = Object.keys(book.names).find((one) => book.names[one] === address);
  const names = Object.fromEntries(
    Object.entries(book.names).filter(([one]) => one !== old && one.toLowerCase() !== name.toLowerCase()),
  );
  const named = { ...book, names: name === "" ? names : { ...names, [name]: address } };
  if (old === undefined || name === "" || old === name) return named;
  return rewritten(named, (formula) =>
    tokens(formula)
      .map((token) =>
        token.kind === "name" && token.text.toLowerCase() === old.toLowerCase() ? name : token.text,
      )
      .join(""),
  );
}

/** Sets or, with "", removes the note of a cell. */
export function noteCell(book: Book, index: number, address: string, note: string): Book {
  const page = book.pages[index]!;
  const notes = Object.fromEntries(Object.entries(page.notes).filter(([one]) => one !== address));
  return withPage(book, index, { ...page, notes: note === "" ? notes : { ...notes, [address]: note } });
}
