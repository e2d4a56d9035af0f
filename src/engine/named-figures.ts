/**
 * Typed figures that make no sense for what they are called: a price of 0, a day that is none, ease below zero, 270 of a
 * piece. Many of them are in no formula, or in one that any figure would suit. Each may be meant and is doubted at its cell.
 */
import type { Kind } from "../../functions/define.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import type { Book, Column, Page } from "../book/shape.ts";
import { understand } from "./content.ts";
import type { Kinds } from "./kinds.ts";
import { labelOf } from "./label.ts";
import type { Uncounted } from "./uncounted.ts";

interface Figure {
  readonly typed: string;
  /** A number; of a day its year, month and day as a text. */
  readonly value: number | string;
  readonly kind: Kind;
}

interface Rule {
  /** Of the label of a cell, or of what follows its last comma. */
  readonly called: RegExp;
  /** What is doubtful about the figure, in a sentence; null for nothing. */
  readonly doubt: (figure: Figure) => string | null;
}

const isBelow = ({ value }: Figure): boolean => typeof value === "number" && value < 0;

/** Kinds of figures that are no amount of pieces, whatever heading stands over them. */
const MEASURED: ReadonlySet<Kind> = new Set<Kind>(["length", "area", "money", "share", "angle", "days"]);

/** More of one thing are hardly cut or sewn; of buttons and hooks there may be more. */
const MANY = 60;
/** Years in which garments of a book may be fitted. */
const [FIRST_YEAR, LAST_YEAR] = [1990, 2100];
/** Cloth that shrinks by more than this is a rare thing. */
const MOST_SHRINKAGE = 0.2;

const RULES: readonly Rule[] = [
  {
    called: /^(?:date|day|today|(?:day|date) of\b.*|(?:taken|measured|fitted) on)$/,
    doubt: ({ typed, value }) => {
      if (typeof value === "number")
        return phrase`${typed} is no day: type it as year, month, day, such as 2026-05-20`;
      const year = Number(value.slice(0, 4));
      return year < FIRST_YEAR || year > LAST_YEAR
        ? phrase`${typed} is not in the years from ${String(FIRST_YEAR)} to ${String(LAST_YEAR)}; is that right?`
        : null;
    },
  },
  {
    called: /\bprice\b/,
    doubt: ({ value }) =>
      value === 0
        ? phrase`a price of 0 makes what is bought cost nothing; is that right? Leave the cell blank until the price is known`
        : null,
  },
  {
    called: /\bshrink/,
    doubt: ({ typed, value }) =>
      typeof value === "number" && (value > MOST_SHRINKAGE || value < 0)
        ? phrase`${typed} is much for cloth that shrinks: 3 % are 0.03; is that right?`
        : null,
  },
  {
    called: /\b(?:how many|quantity|copies|gores|panels|breadths|clasps?)\b/,
    doubt: (figure) => {
      const { typed, value, kind } = figure;
      if (typeof value !== "number" || MEASURED.has(kind)) return null;
      if (isBelow(figure))
        return phrase`${typed} is below zero, and how many there are is asked here; is that right?`;
      return value > MANY
        ? phrase`${typed} are more than ${MANY}, and how many there are is asked here; is that right?`
        : null;
    },
  },
  {
    called: /\b(?:buttons|hooks|eyelets|bones|tucks|pleats|tiers|hours)\b/,
    doubt: (figure) =>
      isBelow(figure) && !MEASURED.has(figure.kind)
        ? phrase`${figure.typed} is below zero, and an amount is asked here; is that right?`
        : null,
  },
  {
    called: /\bease\b|\broom for\b/,
    doubt: (figure) =>
      isBelow(figure)
        ? phrase`${figure.typed} is below zero: the garment is then smaller than the body there; is that meant?`
        : null,
  },
  {
    called: /\b(?:allowance|overlap|fullness|off the floor|gap between)\b/,
    doubt: (figure) => (isBelow(figure) ? phrase`${figure.typed} is below zero; is that meant?` : null),
  },
  {
    called: /\b(?:girth|stature|height)\b/,
    doubt: ({ typed, value }) =>
      typeof value === "number" && value <= 0
        ? phrase`${typed} is no measurement of a body: measure again, or leave the cell blank`
        : null,
  },
];

const isCalled = (text: string): boolean => {
  const words = text.toLowerCase();
  return RULES.some(({ called }) => called.test(words) || called.test(words.trim()));
};

/** A typed number or day that one of the rules may doubt: 0, one below zero, a share, one of three digits or more, or a day. */
const MAY_BE =
  /^\s*(?:[-−].*\d|0*[.,]?0*\s*[a-z%]*|0?[.,]\d+|\d{1,3}\s*%|[\d\s.,']{3,}|\d{4}-\d\d-\d\d)\s*$/i;

interface RowRead {
  /** The columns of figures that may be doubted. */
  readonly columns: readonly number[];
  /** Whether words of the row are those of a rule. */
  readonly isCalled: boolean;
}

const NOTHING: RowRead = { columns: [], isCalled: false };

/** Kept because the list of problems is made after every edit, and few rows have changed. */
const rowsRead = rememberWithObject<readonly string[], RowRead>();
const headingsRead = rememberWithObject<readonly Column[], readonly boolean[]>();
const pagesRead = rememberWithObject<Page, { found: readonly Place[] | null; at: number }>();

const readRow = (row: readonly string[]): RowRead =>
  rowsRead(row, () => {
    const columns = [...row.keys()].filter(
      (column) => row[column]!.trim() !== "" && MAY_BE.test(row[column]!),
    );
    if (columns.length === 0) return NOTHING;
    return { columns, isCalled: row.some((text) => text.length < 200 && isCalled(text)) };
  });

const headingsOf = (columns: readonly Column[]): readonly boolean[] =>
  headingsRead(columns, () => columns.map(({ heading, kind }) => kind === "date" || isCalled(heading)));

/** The cells of a page that are called what a rule is about and hold what it may doubt. */
function candidates(page: Page, at: number): readonly Place[] {
  const kept = pagesRead(page, () => ({ found: null, at }));
  if (kept.found === null || kept.at !== at) {
    const headings = headingsOf(page.columns);
    kept.at = at;
    kept.found = page.rows.flatMap((cells, row) => {
      const read = readRow(cells);
      return read.columns
        .filter((column) => read.isCalled || headings[column] === true)
        .map((column) => ({ page: at, row, column }));
    });
  }
  return kept.found;
}

/** The typed figures that are doubted for what they are called, each once. */
export function namedFigures(book: Book, kinds: Kinds): Uncounted[] {
  return book.pages.flatMap((page, at) =>
    candidates(page, at).flatMap((place): Uncounted[] => {
      const sentence = doubtOf(book, kinds, place);
      return sentence === null
        ? []
        : [{ place, is: "unusual", sentence, first: true, column: null, users: [] }];
    }),
  );
}

function doubtOf(book: Book, kinds: Kinds, place: Place): string | null {
  const { rows, columns } = book.pages[place.page]!;
  const column = columns[place.column];
  const typed = rows[place.row]![place.column]!.trim();
  const content = understand(typed, column?.kind ?? "any", book.unit, book.decimal);
  if (!("value" in content) || content.is === "text" || content.is === "flag" || content.is === "formula")
    return null;
  const label = (labelOf(book, place) ?? "").toLowerCase();
  const heading = column?.kind === "date" ? "date" : (column?.heading.trim().toLowerCase() ?? "");
  const names = [label, label.split(",").at(-1)!.trim(), heading];
  const figure: Figure = { typed, value: content.value, kind: kinds.of(place) };
  for (const { called, doubt } of RULES) {
    const sentence = names.some((name) => called.test(name)) ? doubt(figure) : null;
    if (sentence !== null) return sentence;
  }
  return null;
}
