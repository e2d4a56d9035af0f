/** A book as the text of a file: JSON made to be read and compared, one row of a page a line. */
import { rememberWithObject } from "../../functions/memo.ts";
import type { Book, CellSettings, Column, FoundLay, Other, Page, Trial } from "./shape.ts";

/**
 * The newest version of the file format. A book of version 2 has cells that follow a fitting: a reader of version 1
 * would leave the fitting out without a word.
 */
export const VERSION = 2;

/** The version that a book's file states: the oldest whose readers give every answer as this one does. */
const versionOf = ({ pages }: Book): number =>
  pages.some(({ cells = {} }) => Object.values(cells).some(({ fitting }) => fitting !== undefined)) ? 2 : 1;

type Row = Page["rows"][number];

// What two books share is trimmed once: a row or a page that an edit leaves alone is the same object.
const trimmedRows = rememberWithObject<Row, Row>();
const trimmedPages = rememberWithObject<Page, Page>();

function trimmedRow(row: Row): Row {
  if (row.at(-1) !== "") return row;
  return trimmedRows(row, () => row.slice(0, row.findLastIndex((typed) => typed !== "") + 1));
}

/** The page without what is blank at the ends of its rows and below them: the same object for the same page. */
function trimmed(page: Page): Page {
  return trimmedPages(page, () => {
    const rows = page.rows.map(trimmedRow);
    return { ...page, rows: rows.slice(0, rows.findLastIndex((row) => row.length > 0) + 1) };
  });
}

/** The book as its file will hold it. What two books share, they share here too. */
export const asWritten = (book: Book): Book => ({ ...book, pages: book.pages.map(trimmed) });

const lines = (items: readonly unknown[], indent: string): string =>
  items.length === 0
    ? "[]"
    : `[\n${items.map((item) => `${indent}  ${JSON.stringify(item)}`).join(",\n")}\n${indent}]`;

const table = (entries: Readonly<Record<string, unknown>>, indent: string): string => {
  const list = Object.entries(entries).map(
    ([key, value]) => `${indent}  ${JSON.stringify(key)}: ${JSON.stringify(value)}`,
  );
  return list.length === 0 ? "{}" : `{\n${list.join(",\n")}\n${indent}}`;
};

// One order of the fields, wherever the objects come from: the same book is always the same text.
// Fields of a newer Ellwand come after those that are known here.
const column = ({ heading, kind, width, choices, other }: Column) => ({
  ...{ heading, kind, width, choices },
  ...other,
});
const settings = ({ other, ...one }: CellSettings) => ({
  ...{ choices: one.choices, decimals: one.decimals, unit: one.unit, fitting: one.fitting },
  ...{ photograph: one.photograph, photographWords: one.photographWords },
  ...other,
});
const trial = ({ title, cells, other }: Trial) => ({ title, cells, ...other });
const layOrigin = (origin: NonNullable<FoundLay["origin"]>) => ({
  by: origin.by,
  ...(origin.by === "search" && { seconds: origin.seconds, ...(origin.proved && { proved: true }) }),
  ...origin.other,
});
const placement = ({ piece, copy, cloth, turn, x, y, other }: FoundLay["placements"][number]) => ({
  ...{ piece, copy, cloth, turn, x, y },
  ...other,
});
const lay = ({ placements, length, density, origin, question, other }: FoundLay) => ({
  placements: placements.map(placement),
  length,
  density,
  ...(origin && { origin: layOrigin(origin) }),
  ...(question !== undefined && { question }),
  ...other,
});

/** The lines of the fields that are not known here, each beginning with a comma that parts it from the one before. */
const more = (other: Other | undefined, indent: string): string =>
  Object.entries(other ?? {})
    .map(([key, value]) => `,\n${indent}${JSON.stringify(key)}: ${JSON.stringify(value)}`)
    .join("");

/** A lay and the settings of a page's cells, photographs among them, are written once: an edit leaves most of them alone. */
const layTexts = rememberWithObject<FoundLay, string>();
const cellTexts = rememberWithObject<NonNullable<Page["cells"]>, string>();

const writeCells = (cells: NonNullable<Page["cells"]>): string =>
  cellTexts(cells, () =>
    JSON.stringify(
      Object.fromEntries(Object.entries(cells).map(([address, one]) => [address, settings(one)])),
    ),
  );

/** So many rows of a page are one part of the book's text. */
const GROUP = 500;

/** A page as it was written last, so that a row and a part that an edit leaves alone are not written anew. */
interface WrittenPage {
  readonly page: Page;
  readonly rows: readonly Row[];
  /** The text of each row. */
  readonly texts: readonly string[];
  /** The parts that are groups of rows. */
  readonly groups: readonly string[];
  /** All parts of the page, the groups among them. */
  readonly parts: readonly string[];
}

const writtenPages = new Map<number, WrittenPage>();

const start = (page: Page): string =>
  [
    "    {",
    `      "title": ${JSON.stringify(page.title)},`,
    `      "stage": ${JSON.stringify(page.stage)},`,
    `      "columns": ${lines(page.columns.map(column), "      ")},`,
    '      "rows": [',
  ].join("\n");

const end = ({ names, notes }: Page): string =>
  [
    "],",
    ...(names ? [`      "names": ${table(names, "      ")},`] : []),
    `      "notes": ${table(notes, "      ")}`,
  ].join("\n");

function* pageParts(page: Page, index: number): Generator<string> {
  const last = writtenPages.get(index);
  if (last?.page === page) return yield* last.parts;
  const { rows } = trimmed(page);
  const longer = rows.length - (last?.rows.length ?? 0);
  const texts: string[] = [];
  const groups: string[] = [];
  const parts: string[] = [];
  const part = (text: string): string => {
    parts.push(text);
    return text;
  };
  yield part(start(page));
  for (let from = 0; from < rows.length; from += GROUP) {
    const to = Math.min(from + GROUP, rows.length);
    let isKept = to === Math.min(from + GROUP, last?.rows.length ?? 0);
    for (let i = from; i < to; i += 1) {
      const row = rows[i]!;
      // Where rows were put in or taken out, those beneath are found again from the end.
      const at = last?.rows[i] === row ? i : i - longer;
      isKept &&= last?.rows[i] === row;
      texts.push(last?.rows[at] === row ? last.texts[at]! : `\n        ${JSON.stringify(row)}`);
    }
    const group = isKept
      ? last!.groups[groups.length]!
      : `${from > 0 ? "," : ""}${texts.slice(from).join(",")}`;
    groups.push(group);
    yield part(group);
  }
  yield part(`${rows.length > 0 ? "\n      " : ""}${end(page)}`);
  const { cells = {}, frozen, hidden } = page;
  if (Object.keys(cells).length > 0) {
    yield part(`,\n      "cells": `);
    yield part(writeCells(cells));
  }
  const shown = { ...(frozen && { frozen }), ...(hidden && hidden.length > 0 && { hidden }) };
  yield part(`${more(shown, "      ")}${more(page.other, "      ")}\n    }`);
  writtenPages.set(index, { page, rows, texts, groups, parts });
}

/**
 * The text of a book's file in parts, to be put one behind the other. A part that an edit leaves alone is the
 * same text as before the edit, and costs next to nothing; a part that is new is at most some hundred rows.
 */
export function* bookParts(book: Book): Generator<string> {
  yield `${[
    "{",
    `  "ellwand": ${versionOf(book)},`,
    `  "title": ${JSON.stringify(book.title)},`,
    `  "about": ${JSON.stringify(book.about)},`,
    `  "unit": ${JSON.stringify(book.unit)},`,
    `  "mark": ${JSON.stringify(book.mark)},`,
    ...(book.decimal === "comma" ? ['  "decimal": "comma",'] : []),
    `  "names": ${table(book.names, "  ")},`,
    `  "pages": [`,
  ].join("\n")}\n`;
  for (const [i, page] of book.pages.entries()) {
    if (i > 0) yield ",\n";
    yield* pageParts(page, i);
  }
  yield `\n  ],\n  "trials": ${lines(book.trials.map(trial), "  ")},\n  "lays": `;
  const lays = Object.entries(book.lays);
  for (const [i, [hash, found]] of lays.entries())
    yield `${i > 0 ? "," : "{"}\n    ${JSON.stringify(hash)}: ${layTexts(found, () => JSON.stringify(lay(found)))}`;
  yield `${lays.length > 0 ? "\n  }" : "{}"}${more(book.other, "  ")}\n}\n`;
}

/** The text of a book's file. `readBook` of it is the same book. */
export const writeBook = (book: Book): string => [...bookParts(book)].join("");
