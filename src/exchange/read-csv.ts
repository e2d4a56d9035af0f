/** A file of comma-separated values, whatever parts its cells, as a page of a book. Nothing in it is worked out. */
import Papa from "papaparse";
import { type Decimal, withDecimalMark } from "../../functions/decimal.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import type { Unit } from "../../functions/units.ts";
import {
  type Column,
  type ColumnKind,
  LONGEST,
  MOST_CELLS,
  MOST_COLUMNS,
  MOST_ROWS,
  type Page,
} from "../book/shape.ts";
import { counted } from "./cell-report.ts";
import { columnWidth } from "./column-width.ts";
import { type DateOrder, datesOf, isoDate } from "./csv-dates.ts";
import { decode, type Encoding, type Refused } from "./decode.ts";
import { FIGURE, isDataText, isHeadingLine, losesAsFigure } from "./heading-line.ts";
import { headingUnit, headingWithout, unitOfHeadings, unitSaid } from "./heading-unit.ts";

export interface ImportedPage {
  readonly page: Page;
  /** How the file was understood, in sentences. */
  readonly understood: readonly string[];
  readonly found: {
    readonly delimiter: string;
    /** Null when the figures do not say. */
    readonly decimal: Decimal | null;
    readonly encoding: Encoding;
    readonly headings: boolean;
    readonly unit: Unit;
    /** Null in a file without dates that could have another order. */
    readonly dates: DateOrder | null;
  };
}

/** What is known of the file better than it can be found out. */
export interface CsvForm {
  /** The sign between cells. */
  readonly delimiter?: string | undefined;
  /** The decimal mark of its figures. */
  readonly decimal?: Decimal | undefined;
  readonly encoding?: Encoding | undefined;
  /** The unit of the file's lengths; `usual` where the headings name none either. */
  readonly unit?: Unit | undefined;
  readonly usual?: Unit | undefined;
  /** In which order dates such as 4.5.2026 have their day and month. */
  readonly dates?: DateOrder | undefined;
  /** Whether the first line holds the headings. */
  readonly headings?: boolean | undefined;
  /** The kinds of columns, by column. */
  readonly kinds?: Readonly<Record<number, ColumnKind>> | undefined;
}

/** In the order of preference: a comma comes last, because it stands in figures and in sentences too. */
export const DELIMITERS: Readonly<Record<string, string>> = {
  tab: "\t",
  semicolon: ";",
  stroke: "|",
  comma: ",",
};

/** `title` is that of the page; `bookDecimal` the decimal mark of the book that it goes into. */
export function readCsv(
  bytes: Uint8Array,
  title: string,
  bookDecimal: Decimal = "point",
  form: CsvForm = {},
): ImportedPage | Refused {
  const decoded = decode(bytes, form.encoding);
  if ("refusal" in decoded) return decoded;
  const text = decoded.text.replace(/^\ufeff/, "").replace(/\r\n?/g, "\n");
  const cut =
    form.delimiter === undefined
      ? bestCut(text)
      : { delimiter: form.delimiter, ...parsed(text, form.delimiter) };
  const { rows } = cut;
  while (rows.length > 0 && rows.at(-1)!.every((cell) => cell.trim() === "")) rows.pop();
  if (rows.length === 0) return { refusal: phrase`the file has only blanks` };
  const refusal = sizeFault(rows);
  if (refusal) return { refusal };
  const wide = rows.reduce((most, row) => Math.max(most, row.length), 1);
  const heads =
    form.headings ??
    isHeadingLine(rows[0]!, wide, () => rows.some((row, i) => i > 0 && row.some(isDataText)));
  const body = heads ? rows.slice(1) : rows;
  const headings = heads ? rows[0]!.map((cell) => cell.trim()) : [];
  const unit = form.unit ?? unitOfHeadings(headings) ?? form.usual ?? "in";
  const columns = Array.from({ length: wide }, (_, i): Column => {
    const cells = body.map((row) => row[i] ?? "");
    const named = headings[i] ?? "";
    const heading = headingWithout(named, unit).slice(0, LONGEST.heading);
    const found = headingUnit(named) === unit ? "length" : "any";
    const kind = form.kinds?.[i] ?? (cells.some(losesAsFigure) ? "text" : found);
    return { heading, kind, width: columnWidth(heading, cells) };
  });
  const decimal = form.decimal ? given(form.decimal) : decimalOf(body);
  const dates = datesOf(body, form.dates);
  let inert = 0;
  const typed = body.map((row) =>
    row.map((cell, i) => {
      if (/^\s*=\s*\S/.test(cell)) {
        inert += 1;
        return `'${cell}`;
      }
      return columns[i]!.kind === "text"
        ? cell
        : inBook(isoDate(cell, dates.order), decimal.mark, bookDecimal);
    }),
  );
  const texts = columns.filter(({ kind }, i) => kind === "text" && form.kinds?.[i] === undefined).length;
  const hasLengths = columns.some(({ kind }) => kind === "length");
  const uneven = rows.filter((row) => row.length !== wide).length;
  return {
    page: { title, stage: "Measure", columns, rows: typed, notes: {} },
    found: {
      delimiter: cut.delimiter,
      decimal: decimal.mark,
      encoding: decoded.label,
      headings: heads,
      unit,
      dates: dates.order,
    },
    understood: [
      phrase`The letters are ${decoded.encoding}.`,
      wide === 1
        ? phrase`Each line is one cell.`
        : phrase`The cells are separated by ${NOUNS[cut.delimiter] ?? `"${cut.delimiter}"`}: ${counted(rows.length)} ${plural(rows.length, "line", "lines")} of ${counted(wide)} ${plural(wide, "cell", "cells")}.`,
      ...(cut.loose ? [phrase`The quotes do not pair, so they are kept as signs like others.`] : []),
      ...(uneven > 0
        ? [
            phrase`${counted(uneven)} ${plural(uneven, "line", "lines")} had fewer cells; they are filled with blanks.`,
          ]
        : []),
      heads ? phrase`The first line is taken for the headings.` : phrase`No line is taken for headings.`,
      decimal.sentence,
      ...dates.said,
      ...unitSaid(headings, unit, hasLengths, form.unit !== undefined),
      ...(texts > 0
        ? [
            phrase`${counted(texts)} ${plural(texts, "column is", "columns are")} kept as text, because figures there begin with 0 or have more than 15 digits.`,
          ]
        : []),
      ...(inert > 0
        ? [
            phrase`${counted(inert)} ${plural(inert, "cell that begins", "cells that begin")} with = got ' before it, so that nothing is calculated from the file.`,
          ]
        : []),
    ],
  };
}

const NOUNS: Readonly<Record<string, string>> = {
  "\t": phrase`tabs`,
  ";": phrase`semicolons`,
  "|": phrase`upright strokes`,
  ",": phrase`commas`,
};

interface Cut {
  readonly rows: string[][];
  /** Whether the quotes do not pair and were taken for signs. */
  readonly loose: boolean;
}

function parsed(text: string, delimiter: string): Cut {
  const read = (quoteChar: string) => Papa.parse<string[]>(text, { delimiter, newline: "\n", quoteChar });
  const quoted = read('"');
  const loose = quoted.errors.some(({ type }) => type === "Quotes");
  return { rows: (loose ? read("\0") : quoted).data, loose };
}

/** How much of a file is looked at to find what parts its cells. */
const LOOKED_AT = 100_000;

/** The text cut at the sign that cuts most of its lines into the same number of cells, two or more. */
function bestCut(text: string): Cut & { readonly delimiter: string } {
  const part =
    text.length > LOOKED_AT ? text.slice(0, text.lastIndexOf("\n", LOOKED_AT) + 1 || LOOKED_AT) : text;
  const shares = Object.values(DELIMITERS).map((delimiter) => {
    const counts = parsed(part, delimiter).rows.filter((row) => row.some((cell) => cell.trim() !== ""));
    const wide = counts.map((row) => row.length);
    const usual = wide.toSorted((a, b) => a - b)[wide.length >> 1] ?? 1;
    return { delimiter, share: usual < 2 ? 0 : wide.filter((one) => one === usual).length / wide.length };
  });
  const best = shares.reduce((a, b) => (b.share > a.share ? b : a));
  const delimiter = best.share > 0.5 ? best.delimiter : mostOften(part);
  return { delimiter, ...parsed(text, delimiter) };
}

/** Where no sign cuts the lines alike, the one that stands in most lines, if it stands in half of them. */
function mostOften(text: string): string {
  const lines = text.split("\n").filter((line) => line !== "");
  const found = Object.values(DELIMITERS).find(
    (delimiter) => lines.filter((line) => line.includes(delimiter)).length * 2 > lines.length,
  );
  return found ?? "\t";
}

function sizeFault(rows: readonly (readonly string[])[]): string | null {
  if (rows.length > MOST_ROWS + 1)
    return phrase`the file has ${counted(rows.length)} lines, and a page holds at most ${counted(MOST_ROWS)} rows; cut it into parts`;
  let cells = 0;
  for (const [i, row] of rows.entries()) {
    cells += row.length;
    if (row.length > MOST_COLUMNS)
      return phrase`line ${counted(i + 1)} has ${counted(row.length)} cells, and a page holds at most ${MOST_COLUMNS} columns; leave out columns, or say what parts the cells`;
    const long = row.find((cell) => cell.length > LONGEST.typed);
    if (long !== undefined)
      return phrase`a cell of line ${counted(i + 1)} has ${counted(long.length)} characters, and a cell holds at most ${counted(LONGEST.typed)}; look for a quote that is not closed`;
  }
  return cells > MOST_CELLS
    ? phrase`the file has ${counted(cells)} cells, and a book holds at most ${counted(MOST_CELLS)}; cut it into parts`
    : null;
}

/** A figure with this decimal mark, its thousands in groups of three if they are separated; "4.5.2026" is not a figure. */
const WITH_MARK: Readonly<Record<Decimal, RegExp>> = {
  point: /^\s*[-+]?(?:\d*|\d{1,3}(?:[, \u00a0\u202f']\d{3})+)(?:\.\d+|\.)?\s*%?$/,
  comma: /^\s*[-+]?(?:\d*|\d{1,3}(?:[. \u00a0\u202f']\d{3})+)(?:,\d+|,)?\s*%?$/,
};

const isFigure = (cell: string, mark: Decimal): boolean =>
  FIGURE.test(cell) && WITH_MARK[mark].test(cell.trimEnd());

const given = (mark: Decimal) => ({
  mark,
  sentence:
    mark === "comma"
      ? phrase`The figures have a decimal comma, as you say.`
      : phrase`The figures have a decimal point, as you say.`,
});

function decimalOf(rows: readonly (readonly string[])[]): { mark: Decimal | null; sentence: string } {
  const counts = { comma: 0, point: 0, unclear: 0 };
  let example = "";
  for (const row of rows) {
    for (const cell of row) {
      if (!isFigure(cell, "point") && !isFigure(cell, "comma")) continue;
      const figure = cell.trim();
      const last = /([.,])(\d+)\D*$/.exec(figure);
      if (!last) continue;
      const signs = figure.match(/[.,]/g)!;
      const [sign, digits] = [last[1], last[2]!.length];
      const other = signs.some((one) => one !== sign);
      const twice = signs.filter((one) => one === sign).length > 1;
      // 1.234.567 is in threes; so is the point of 1.234,5. The sign before three digits alone may be either.
      const mark = twice ? (sign === "," ? "point" : "comma") : sign === "," ? "comma" : "point";
      if (digits === 3 && !other && !twice && !/^\D*0[.,]/.test(figure)) {
        counts.unclear += 1;
        example ||= figure;
      } else counts[mark] += 1;
    }
  }
  if (counts.comma > 0 && counts.point > 0)
    return {
      mark: null,
      sentence: phrase`Some figures have a decimal comma (${counts.comma}), some a point (${counts.point}); each is read by itself.`,
    };
  if (counts.comma > 0) return { mark: "comma", sentence: phrase`The figures have a decimal comma.` };
  if (counts.point > 0) return { mark: "point", sentence: phrase`The figures have a decimal point.` };
  return {
    mark: null,
    sentence:
      counts.unclear > 0
        ? phrase`${counted(counts.unclear)} ${plural(counts.unclear, "figure", "figures")} such as ${example} can be read in two ways: say which decimal mark the file has.`
        : phrase`No figure has decimals.`,
  };
}

/** A figure of a file with this decimal mark as the book writes it; other cells as they are. */
function inBook(cell: string, mark: Decimal | null, bookDecimal: Decimal): string {
  if (mark === null || !/[.,]/.test(cell) || !isFigure(cell, mark)) return cell;
  const [thousands, point] = mark === "comma" ? [/\./g, ","] : [/,/g, "."];
  const plain = cell
    .trim()
    .replace(thousands, "")
    .replace(/[ \u00a0\u202f']/g, "")
    .replace(point, ".");
  return /^[-+]?\d+(?:\.\d+)?%?$/.test(plain) ? withDecimalMark(plain, bookDecimal) : cell;
}
