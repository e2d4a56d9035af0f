/**
 * Typed figures that make no sense for what they are called: a price of 0, a day that cannot be, ease below zero, 270 of a
 * piece. Many of them are in no formula, or in one that any figure would suit. Each may be meant and is doubted at its cell.
 */
import type { Kind } from "../../functions/define.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { changedRows } from "../book/changed-rows.ts";
import type { Book, Page } from "../book/shape.ts";
import { understand } from "./content.ts";
import type { Kinds } from "./kinds.ts";
import { labelOf } from "./label.ts";
import type { Uncounted } from "./uncounted.ts";

interface Figure {
  readonly typed: string;
  /** A number; of a day its year, month and day as a text. */
  readonly value: number | string;
}

interface Rule {
  /** Of the label of a cell, or of what follows its last comma. */
  readonly called: RegExp;
  /** Whether it is about what is counted: a measured figure is not counted, whatever heading stands over it. */
  readonly counts?: true;
  /** What is doubtful about the figure, in a sentence; null for nothing. */
  readonly doubt: (figure: Figure) => string | null;
}

const isBelow = ({ value }: Figure): boolean => typeof value === "number" && value < 0;

/** Kinds of figures that are measured, not counted. */
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
    counts: true,
    doubt: (figure) => {
      const { typed, value } = figure;
      if (typeof value !== "number") return null;
      if (isBelow(figure))
        return phrase`${typed} is below zero, and how many there are is asked here; is that right?`;
      return value > MANY
        ? phrase`${typed} are more than ${MANY}, and how many there are is asked here; is that right?`
        : null;
    },
  },
  {
    called: /\b(?:buttons|hooks|eyelets|bones|tucks|pleats|tiers|hours)\b/,
    counts: true,
    doubt: (figure) =>
      isBelow(figure)
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

/** A typed number or day that one of the rules may doubt: 0, one below zero, a share, one of three digits or more, or a day. */
const MAY_BE =
  /^\s*(?:[-−].*\d|0*[.,]?0*\s*[a-z%]*|0?[.,]\d+|\d{1,3}\s*%|[\d\s.,']{3,}|\d{4}-\d\d-\d\d)\s*$/i;

/** What is doubted in a row. */
interface Doubt {
  readonly column: number;
  readonly sentence: string;
  readonly counts: boolean;
}

/** What the doubts of a row rest on beside its texts. */
type Reading = Pick<Book, "unit"> & Pick<Page, "columns"> & { readonly decimal: Book["decimal"] | undefined };

const isSame = (a: Reading, b: Reading): boolean =>
  a.columns === b.columns && a.unit === b.unit && a.decimal === b.decimal;

const NOTHING: readonly Doubt[] = [];

/** Kept because the list of problems is made after every edit, and few rows have changed. */
const rowsRead = rememberWithObject<
  readonly string[],
  { reading: Reading | null; doubts: readonly Doubt[] }
>();

function doubtsOfRow(book: Book, reading: Reading, page: number, row: number): readonly Doubt[] {
  const cells = book.pages[page]!.rows[row]!;
  const kept = rowsRead(cells, () => ({ reading: null, doubts: NOTHING }));
  if (kept.reading === null || !isSame(kept.reading, reading)) {
    const doubts = cells.flatMap((typed, column) =>
      typed !== "" && MAY_BE.test(typed) ? doubtsOf(book, { page, row, column }) : NOTHING,
    );
    kept.doubts = doubts.length > 0 ? doubts : NOTHING;
    kept.reading = reading;
  }
  return kept.doubts;
}

/** What the rules that a cell is called by doubt about it, in their order. */
function doubtsOf(book: Book, place: Place): readonly Doubt[] {
  const { rows, columns } = book.pages[place.page]!;
  const column = columns[place.column];
  const typed = rows[place.row]![place.column]!.trim();
  const label = (labelOf(book, place) ?? "").toLowerCase();
  const heading = column?.kind === "date" ? "date" : (column?.heading.trim().toLowerCase() ?? "");
  const names = [label, label.split(",").at(-1)!.trim(), heading];
  const rules = RULES.filter(({ called }) => names.some((name) => called.test(name)));
  if (rules.length === 0) return NOTHING;
  const content = understand(typed, column?.kind ?? "any", book.unit, book.decimal);
  if (!("value" in content) || content.is === "text" || content.is === "flag" || content.is === "formula")
    return NOTHING;
  const figure: Figure = { typed, value: content.value };
  return rules.flatMap(({ doubt, counts = false }) => {
    const sentence = doubt(figure);
    return sentence === null ? [] : { column: place.column, sentence, counts };
  });
}

interface PageRead {
  readonly rows: WeakRef<Page["rows"]>;
  readonly reading: Reading;
  /** The rows in which something is doubted. */
  readonly found: Map<number, readonly Doubt[]>;
}

/** What was read of each page last: after an edit only the rows that changed are read. */
const pagesRead: PageRead[] = [];

function doubtsOfPage(book: Book, at: number): PageRead["found"] {
  const { rows, columns } = book.pages[at]!;
  const reading: Reading = { unit: book.unit, decimal: book.decimal, columns };
  const kept = pagesRead[at];
  const was = kept && isSame(kept.reading, reading) ? kept.rows.deref() : undefined;
  const found: PageRead["found"] = was ? kept!.found : new Map();
  for (const row of was ? changedRows(was, rows) : rows.keys()) {
    const doubts = row < rows.length ? doubtsOfRow(book, reading, at, row) : NOTHING;
    if (doubts.length > 0) found.set(row, doubts);
    else found.delete(row);
  }
  pagesRead[at] = { rows: new WeakRef(rows), reading, found };
  return found;
}

/** The typed figures that are doubted for what they are called, each once. */
export function namedFigures(book: Book, kinds: Kinds): Uncounted[] {
  return book.pages.flatMap((_, page) => {
    const found = doubtsOfPage(book, page);
    return [...found.keys()]
      .sort((a, b) => a - b)
      .flatMap((row) => {
        const seen = new Set<number>();
        return found.get(row)!.flatMap(({ column, sentence, counts }): Uncounted[] => {
          const place = { page, row, column };
          if (seen.has(column) || (counts && MEASURED.has(kinds.of(place)))) return [];
          seen.add(column);
          return [{ place, is: "unusual", sentence, first: true, column: null, users: [] }];
        });
      });
  });
}
