/** How a table of another program is to be understood, and how it was: plain data that a dialog can show and change. */
import type { Decimal } from "../../functions/decimal.ts";
import type { Unit } from "../../functions/units.ts";
import type { Book, ColumnKind } from "../book/shape.ts";
import type { DateOrder } from "./csv-dates.ts";
import type { Encoding } from "./decode.ts";

/** What is known of one sheet better than it can be found out. */
export interface SheetForm {
  /** Whether it becomes a page. */
  readonly take?: boolean | undefined;
  /** Whether its first line holds the headings. */
  readonly headings?: boolean | undefined;
  /** The kinds of columns, by column. */
  readonly kinds?: Readonly<Record<number, ColumnKind>> | undefined;
  /** Which heading a column with one of another language gets, by column; "" for its own. */
  readonly called?: Readonly<Record<number, string>> | undefined;
}

/** A column whose heading has a meaning in another language. */
export interface CalledColumn {
  /** Its heading in the file. */
  readonly heading: string;
  /** The headings of the functions that it may mean. */
  readonly may: readonly string[];
  /** The one that it gets, "" where it keeps its own, or null where that is not clear. */
  readonly is: string | null;
}

/** What is known of a file better than it can be found out; what is left out is found out. */
export interface TableForm {
  /** The unit of its lengths. */
  readonly unit?: Unit | undefined;
  /** By sheet; a file of separated values has one sheet, number 0. */
  readonly sheets?: Readonly<Record<number, SheetForm>> | undefined;
  /** Of separated values: the sign between cells, the decimal mark of the figures, the encoding of the letters. */
  readonly delimiter?: string | undefined;
  readonly decimal?: Decimal | undefined;
  readonly encoding?: Encoding | undefined;
  /** And the order of day and month in dates such as 4.5.2026. */
  readonly dates?: DateOrder | undefined;
}

/** A sheet of the file, and the page that it becomes. */
export interface UnderstoodSheet {
  readonly sheet: number;
  readonly title: string;
  readonly take: boolean;
  readonly headings: boolean;
  readonly rows: number;
  readonly columns: number;
  /** The page in the book; null for a sheet that is left out. */
  readonly page: number | null;
  /** What is ambiguous, changed or ignored on it, in sentences. */
  readonly said: readonly string[];
  /** Which of its columns have a heading of another language, by column. */
  readonly called?: Readonly<Record<number, CalledColumn>>;
}

/** A file as it was understood. */
export interface Understood {
  /** "separated values", "a spreadsheet of ISO/IEC 29500" or "… 26300". */
  readonly what: string;
  /** A book of the sheets that are taken, in the unit of the file's lengths. */
  readonly book: Book;
  readonly sheets: readonly UnderstoodSheet[];
  /** What concerns the whole file, in sentences. */
  readonly said: readonly string[];
  /** What was found out, or given; of separated values only. */
  readonly delimiter?: string;
  readonly decimal?: Decimal | null;
  readonly encoding?: Encoding;
  readonly dates?: DateOrder | null;
}
