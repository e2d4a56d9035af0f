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

/** How a page is shown, as far as anything is set. */
const arrangement = ({ cells = {}, frozen, hidden }: Page): Other => ({
  ...(Object.keys(cells).length > 0 && {
    cells: Object.fromEntries(Object.entries(cells).map(([address, one]) => [address, settings(one)])),
  }),
  ...(frozen && { frozen }),
  ...(hidden && hidden.length > 0 && { hidden }),
});

/** The rows of a page as its file holds them, each with its text: a row that an edit leaves alone is not written anew. */
const rowTexts = new Map<number, { readonly rows: readonly Row[]; readonly texts: readonly string[] }>();

function writeRows(page: number, rows: readonly Row[]): string {
  const last = rowTexts.get(page);
  const longer = rows.length - (last?.rows.length ?? 0);
  const texts = rows.map((row, i) => {
    // Where rows were put in or taken out, those beneath are found again from the end.
    const at = last?.rows[i] === row ? i : i - longer;
    return last?.rows[at] === row ? last.texts[at]! : `        ${JSON.stringify(row)}`;
  });
  rowTexts.set(page, { rows, texts });
  return texts.length === 0 ? "[]" : `[\n${texts.join(",\n")}\n      ]`;
}

function writePage(page: Page, index: number): string {
  return [
    "    {",
    `      "title": ${JSON.stringify(page.title)},`,
    `      "stage": ${JSON.stringify(page.stage)},`,
    `      "columns": ${lines(page.columns.map(column), "      ")},`,
    `      "rows": ${writeRows(index, trimmed(page).rows)},`,
    ...(page.names ? [`      "names": ${table(page.names, "      ")},`] : []),
    `      "notes": ${table(page.notes, "      ")}${more(arrangement(page), "      ")}${more(page.other, "      ")}`,
    "    }",
  ].join("\n");
}

/** The text of a book's file. `readBook` of it is the same book. */
export function writeBook(book: Book): string {
  return `${[
    "{",
    `  "ellwand": ${versionOf(book)},`,
    `  "title": ${JSON.stringify(book.title)},`,
    `  "about": ${JSON.stringify(book.about)},`,
    `  "unit": ${JSON.stringify(book.unit)},`,
    `  "mark": ${JSON.stringify(book.mark)},`,
    ...(book.decimal === "comma" ? ['  "decimal": "comma",'] : []),
    `  "names": ${table(book.names, "  ")},`,
    `  "pages": [\n${book.pages.map(writePage).join(",\n")}\n  ],`,
    `  "trials": ${lines(book.trials.map(trial), "  ")},`,
    `  "lays": ${table(Object.fromEntries(Object.entries(book.lays).map(([hash, found]) => [hash, lay(found)])), "  ")}${more(book.other, "  ")}`,
    "}",
  ].join("\n")}\n`;
}
