import type { Decimal } from "../../functions/decimal.ts";
import { DEFAULT_MARK } from "../../functions/fractions.ts";
import { isUnit, UNIT_CHOICES, UNITS, type Unit } from "../../functions/units.ts";
import { type Book, blankBook, LONGEST, type Page } from "../book/shape.ts";
import { writeBook } from "../book/write.ts";
import { MOST_BYTES } from "../exchange/decode.ts";
import { DELIMITERS, readCsv } from "../exchange/read-csv.ts";
import { fileName } from "./machine.ts";
import { readOptions } from "./options.ts";
import { JSON_OPTION, type Verb, type VerbOptions, Wrong } from "./verb.ts";

const OPTIONS = {
  out: {
    type: "string",
    value: "BOOK",
    about: "the book's file to write; without it nothing is written, and what would be is shown",
  },
  unit: { type: "string", value: UNITS.join("|"), about: "the unit of the book; inches when left out" },
  delimiter: {
    type: "string",
    value: Object.keys(DELIMITERS).join("|"),
    about: "what stands between the cells; found out when left out",
  },
  decimal: {
    type: "string",
    value: "point|comma",
    about: "the decimal mark of the file's figures; found out when left out",
  },
  ...JSON_OPTION,
} as const satisfies VerbOptions;

/** How many rows are shown of what was read. */
const SHOWN = 5;

export const importFile: Verb = {
  name: "import",
  usage: `FILE [--out BOOK] [--unit ${UNITS.join("|")}] [--delimiter ${Object.keys(DELIMITERS).join("|")}] [--decimal point|comma] [--json]`,
  about:
    "Makes a book of a file of comma-separated values, whatever parts its cells, and says how the file was understood.",
  options: OPTIONS,
  examples: [
    "import tests/src/exchange/fittings.csv",
    "import tests/src/exchange/fittings.csv --unit cm --out fittings.json",
  ],
  writes: "How the file was understood and its first rows, on standard output; the book in BOOK.",
  async run(args, io) {
    const { values, positionals } = readOptions(args, OPTIONS, 1);
    const [path] = positionals;
    if (path === undefined) throw new Wrong("import needs a file to read");
    const unit = values.unit ?? "in";
    if (!isUnit(unit)) throw new Wrong(`--unit must be ${UNIT_CHOICES}, not "${unit}"`);
    const title = titleOf(path);
    const read = readCsv(io.bytes(path, MOST_BYTES), title, "point", {
      delimiter: delimiterOf(values.delimiter),
      decimal: decimalOf(values.decimal),
    });
    if ("refusal" in read) throw new Wrong(`${fileName(path)}: ${read.refusal}`);

    const out = values.out?.trim();
    if (out === "") throw new Wrong("--out is empty; give the book's file, such as --out fittings.json");
    if (out !== undefined) io.write(out, writeBook(bookWith(read.page, unit)));
    const { columns, rows } = read.page;
    const headings = columns.map(({ heading }) => heading);
    if (values.json)
      io.out(
        JSON.stringify(
          {
            understood: read.understood,
            headings,
            rows: rows.length,
            first: rows.slice(0, SHOWN),
            file: out,
          },
          null,
          2,
        ),
      );
    else io.out([...read.understood, "", ...preview(read.page)].join("\n"));
    return 0;
  },
};

const bookWith = (page: Page, unit: Unit): Book => ({
  ...blankBook(page.title, unit, DEFAULT_MARK[unit]),
  pages: [page],
});

function delimiterOf(word: string | undefined): string | undefined {
  if (word === undefined) return undefined;
  const sign = DELIMITERS[word];
  if (sign === undefined)
    throw new Wrong(`--delimiter must be ${Object.keys(DELIMITERS).join(", ")}, not "${word}"`);
  return sign;
}

function decimalOf(word: string | undefined): Decimal | undefined {
  if (word === undefined || word === "point" || word === "comma") return word;
  throw new Wrong(`--decimal must be point or comma, not "${word}"`);
}

/** "lists/fittings.csv" → "fittings": the name without what a page's title can't have. */
const titleOf = (path: string): string =>
  path
    .replace(/^.*[\\/]/, "")
    .replace(/\.[^.]*$/, "")
    .replace(/[[\]:*?/\\']|\p{Cc}/gu, " ")
    .trim()
    .slice(0, LONGEST.pageTitle) || "Imported";

/** The headings and the first rows, as they stand in the book. */
function preview({ columns, rows }: Page): string[] {
  const line = (cells: readonly string[]) =>
    cells.map((cell) => cell.replace(/\s+/g, " ").slice(0, 24)).join(" | ");
  const heads = columns.some(({ heading }) => heading !== "")
    ? [line(columns.map(({ heading }) => heading))]
    : [];
  const left = rows.length - SHOWN;
  return [...heads, ...rows.slice(0, SHOWN).map(line), ...(left > 0 ? [`and ${left} more rows`] : [])];
}
