import type { Decimal } from "../../functions/decimal.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { UNITS } from "../../functions/units.ts";
import type { Page } from "../book/shape.ts";
import { writeBook } from "../book/write.ts";
import { DATE_ORDERS, type DateOrder } from "../exchange/csv-dates.ts";
import { ENCODINGS, type Encoding, MOST_BYTES } from "../exchange/decode.ts";
import { fileKind, JUDGED_BYTES } from "../exchange/file-kind.ts";
import { DELIMITERS } from "../exchange/read-csv.ts";
import { readTable, understandTable } from "../exchange/read-table.ts";
import type { Understood } from "../exchange/table-form.ts";
import { layDesk } from "../lay/desk.ts";
import { importOutlines, OUTLINE_OPTIONS } from "./import-outlines.ts";
import { fileName } from "./machine.ts";
import { notOneOf, readOptions, unitFrom } from "./options.ts";
import { JSON_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  out: {
    type: "string",
    value: "BOOK",
    about: phrase`the book's file to write; without it nothing is written, and what would be is shown`,
  },
  unit: {
    type: "string",
    value: UNITS.join("|"),
    about: phrase`the unit of the file's lengths, and of the book; found out from the headings, else inches`,
  },
  delimiter: {
    type: "string",
    value: Object.keys(DELIMITERS).join("|"),
    about: phrase`what stands between the cells of separated values; found out when left out`,
  },
  decimal: {
    type: "string",
    value: "point|comma",
    about: phrase`the decimal mark of separated values; found out when left out`,
  },
  encoding: {
    type: "string",
    value: Object.keys(ENCODINGS).join("|"),
    about: phrase`how the letters of separated values are written; found out when left out`,
  },
  ...OUTLINE_OPTIONS,
  dates: {
    type: "string",
    value: Object.keys(DATE_ORDERS).join("|"),
    about: phrase`the order of day and month in separated values such as 4.5.2026; found out where a number above 12 shows it`,
  },
  ...JSON_OPTION,
} as const satisfies VerbOptions;

/** How many rows are shown of what was read. */
const SHOWN = 5;

export const importFile: Verb = {
  name: "import",
  usage: `FILE [--out BOOK] [--unit ${UNITS.join("|")}] [--delimiter ${Object.keys(DELIMITERS).join("|")}] [--decimal point|comma] [--encoding ${Object.keys(ENCODINGS).join("|")}] [--dates ${Object.keys(DATE_ORDERS).join("|")}] [--known EDGE=LENGTH] [--scale N] [--inner marks|pieces] [--json]`,
  about: phrase`Makes a book of a file of another program, and says how it was understood: of separated values (CSV), whatever parts the cells, of a spreadsheet file of ISO/IEC 29500 (.xlsx) or 26300 (.ods), whose formulas come alive; or of the pattern pieces drawn in an SVG or DXF file. Macros are not run and links are not followed.`,
  options: OPTIONS,
  examples: [
    "import tests/src/exchange/fittings.csv --unit cm --out fittings.json",
    "import tests/src/exchange/outlines/yoke.svg --unit cm --out yoke.json",
  ],
  writes: phrase`How the file was understood and its first rows, on standard output; the book in BOOK.`,
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const [path] = positionals;
    if (path === undefined) throw new Wrong(phrase`${"import"} needs a file to read`);
    const unit = values.unit === undefined ? undefined : unitFrom(values.unit);
    const form = {
      unit,
      delimiter: delimiterOf(values.delimiter),
      decimal: decimalOf(values.decimal),
      encoding: encodingOf(values.encoding),
      dates: datesOf(values.dates),
    };
    const out = values.out?.trim();
    if (out === "")
      throw new Wrong(phrase`--out is empty; give the book's file, such as ${"--out fittings.json"}`);
    const bytes = io.bytes(path, MOST_BYTES);
    const judged = fileKind(bytes.subarray(0, JUDGED_BYTES), path);
    if ("kind" in judged && judged.kind === "book")
      throw new Wrong(
        phrase`${fileName(path)}: it is a book of Ellwand already; give it to the other verbs as it is`,
      );
    if ("kind" in judged && judged.kind === "outline") return importOutlines(path, bytes, values, io);
    const read = await readTable(bytes, path);
    if ("refusal" in read) throw new Wrong(`${fileName(path)}: ${read.refusal}`);
    const found = understandTable(read, form, { decimal: null, unit: "in", desk: layDesk });
    if ("refusal" in found) throw new Wrong(`${fileName(path)}: ${found.refusal}`);
    if (out !== undefined) io.write(out, writeBook(found.book));
    if (values.json) io.out(JSON.stringify(inShort(found, out), null, 2));
    else io.out(saidOfSheets(found).join("\n"));
    return 0;
  },
};

const headingsOf = ({ columns }: Page): string[] => columns.map(({ heading }) => heading);

function inShort({ said, sheets, book }: Understood, file: string | undefined) {
  const pages = sheets.map(({ title, rows, page, said }) => ({
    title,
    ...(page === null
      ? { left: true }
      : { headings: headingsOf(book.pages[page]!), rows, first: book.pages[page]!.rows.slice(0, SHOWN) }),
    understood: said,
  }));
  return { understood: said, unit: book.unit, pages, file };
}

function saidOfSheets({ said, sheets, book }: Understood): string[] {
  return [
    ...said,
    ...sheets.flatMap(({ title, rows, columns, page, said }) => [
      "",
      page === null
        ? phrase`${title}: left out`
        : phrase`${title}: ${plural(rows, "# row", "# rows")}, ${plural(columns, "# column", "# columns")}`,
      ...said,
      ...(page === null ? [] : ["", ...preview(book.pages[page]!)]),
    ]),
  ];
}

function delimiterOf(word: string | undefined): string | undefined {
  if (word === undefined) return undefined;
  const sign = DELIMITERS[word];
  if (sign === undefined) throw notOneOf("--delimiter", Object.keys(DELIMITERS), word);
  return sign;
}

function decimalOf(word: string | undefined): Decimal | undefined {
  if (word === undefined || word === "point" || word === "comma") return word;
  throw notOneOf("--decimal", ["point", "comma"], word);
}

function encodingOf(word: string | undefined): Encoding | undefined {
  if (word === undefined || Object.hasOwn(ENCODINGS, word)) return word as Encoding | undefined;
  throw notOneOf("--encoding", Object.keys(ENCODINGS), word);
}

function datesOf(word: string | undefined): DateOrder | undefined {
  if (word === undefined || Object.hasOwn(DATE_ORDERS, word)) return word as DateOrder | undefined;
  throw notOneOf("--dates", Object.keys(DATE_ORDERS), word);
}

/** The headings and the first rows, as they stand in the book. */
function preview({ columns, rows }: Page): string[] {
  const line = (cells: readonly string[]) =>
    cells.map((cell) => cell.replace(/\s+/g, " ").slice(0, 24)).join(" | ");
  const heads = columns.some(({ heading }) => heading !== "")
    ? [line(columns.map(({ heading }) => heading))]
    : [];
  const left = rows.length - SHOWN;
  return [
    ...heads,
    ...rows.slice(0, SHOWN).map(line),
    ...(left > 0 ? [phrase`and ${plural(left, "# more row", "# more rows")}`] : []),
  ];
}
