/**
 * A book as plain data. It is the one truth: the engine, the grid, the drawings and the file are
 * all worked out from it. Nothing here changes in place; an edit makes a new book that shares
 * what it did not touch, so two books can be compared by looking at what is not the same object.
 */

import type { Decimal } from "../../functions/decimal.ts";
import type { TapeMark } from "../../functions/fractions.ts";
import type { LayOrigin, Placement } from "../../functions/lay.ts";
import type { TapeUnit, Unit } from "../../functions/units.ts";
import { STAGE_COLUMNS } from "./stage-columns.ts";

/** The stages of the work, in order. */
export const STAGES = ["Measure", "Draft", "Fit", "Cut", "Trimmings"] as const;
export type Stage = (typeof STAGES)[number];

/** What a column holds; "any" lets each cell speak for itself. */
export const COLUMN_KINDS = ["any", "text", "length", "number", "money", "date"] as const;
export type ColumnKind = (typeof COLUMN_KINDS)[number];

/** Fields of a file that this version does not know, by name. They are carried along and written again. */
export type Other = Readonly<Record<string, unknown>>;

export interface Column {
  readonly heading: string;
  readonly kind: ColumnKind;
  /** On the screen, in pixels. */
  readonly width: number;
  /**
   * What its cells are chosen from: a list, "box; knife", or the cells that hold the choices, "=Measure!A2:A6".
   * Cells of the page may have choices of their own.
   */
  readonly choices?: string;
  readonly other?: Other;
}

/** What is set for one cell beside what is typed in it. */
export interface CellSettings {
  /** What the cell is chosen from, written as for a column. */
  readonly choices?: string;
  /** How many decimal places its figure is shown with; the value stays as it is. */
  readonly decimals?: number;
  /** The unit its length is shown in, whatever the book's; the value stays as it is. */
  readonly unit?: TapeUnit;
  /** The seam whose fitting changes are added to what is typed, as src/book/fitting.ts reads it. */
  readonly fitting?: string;
  /** A small photograph as a data URL, as src/book/photographs.ts says, and what it shows. */
  readonly photograph?: string;
  readonly photographWords?: string;
  readonly other?: Other;
}

export interface Page {
  readonly title: string;
  readonly stage: Stage;
  readonly columns: readonly Column[];
  /** What was typed, row by row; "" is a blank cell and rows may be shorter than the columns. */
  readonly rows: readonly (readonly string[])[];
  /** Notes by cell address, such as "B3". */
  readonly notes: Readonly<Record<string, string>>;
  /** The page's own names, as those of a book; left out when it has no names. */
  readonly names?: Readonly<Record<string, string>>;
  /** Settings of single cells by address, such as "B3". */
  readonly cells?: Readonly<Record<string, CellSettings>>;
  /** How many columns at the left stay in sight when the page is scrolled sideways; no column when left out. */
  readonly frozen?: number;
  /** Runs of rows that are not shown, as formulas write rows: "5:9". Their cells count all the same. */
  readonly hidden?: readonly string[];
  readonly other?: Other;
}

/** A kept setting of typed cells, to be compared with others. */
export interface Trial {
  readonly title: string;
  /** Typed text by cell address with its page: "Draft!B4". */
  readonly cells: Readonly<Record<string, string>>;
  readonly other?: Other;
}

/** The best lay found for a question, kept because the search can't be repeated elsewhere. */
export interface FoundLay {
  readonly placements: readonly (Placement & { readonly other?: Other })[];
  readonly length: number;
  readonly density: number;
  /** How it was found; books of earlier versions do not say, and then it was a search of unknown length. */
  readonly origin?: LayOrigin & { readonly other?: Other };
  /** The question itself, as `questionText` writes it: the lay bounds smaller jobs even when no cell asks it any more. */
  readonly question?: string;
  readonly other?: Other;
}

export interface Book {
  readonly title: string;
  readonly about: string;
  readonly unit: Unit;
  readonly mark: TapeMark;
  /** The decimal mark that figures are shown with; a point when left out. Both are read. */
  readonly decimal?: Decimal;
  readonly pages: readonly Page[];
  /** Names of cells and lists: name → address with its page, such as "Measure!C4", "Cut!A2:B9" or "Cut!A:C". */
  readonly names: Readonly<Record<string, string>>;
  readonly trials: readonly Trial[];
  /** Found lays by the hash of their question. */
  readonly lays: Readonly<Record<string, FoundLay>>;
  readonly other?: Other;
}

export const MOST_ROWS = 20_000;
export const MOST_COLUMNS = 200;
export const MOST_PAGES = 100;
/** Of a whole book; more would be too slow to work with in a browser. */
export const MOST_CELLS = 1_000_000;

/** The most columns that stay in sight; more would leave no room to scroll. */
export const MOST_FROZEN = 3;

/** The most decimal places that a cell can be shown with. */
export const MOST_DECIMALS = 6;

/** The longest texts, in characters. A drawn outline in a cell may be long; nothing else is. */
export const LONGEST = {
  title: 200, about: 20_000, pageTitle: 80, heading: 200, typed: 100_000, note: 5000, choices: 5000, fitting: 200,
} as const; // biome-ignore format: a table

/** The least and the greatest width of a column, in pixels. */
export const WIDTHS = [20, 2000] as const;

/** A column that comes without being asked for. */
export const BLANK_COLUMN: Column = { heading: "", kind: "any", width: 110 };

/** A blank page with the columns that its stage needs. */
export const blankPage = (title: string, stage: Stage): Page => ({
  title,
  stage,
  columns: STAGE_COLUMNS[stage],
  rows: [],
  notes: {},
});

/** A book with one blank page for each stage. */
export function blankBook(title: string, unit: Unit, mark: TapeMark): Book {
  const pages = STAGES.map((stage) => blankPage(stage, stage));
  return { title, about: "", unit, mark, pages, names: {}, trials: [], lays: {} };
}

/** How many cells the rows of a book hold, blanks between typed cells among them. */
export const cellsIn = (book: Book): number =>
  book.pages.reduce((sum, { rows }) => rows.reduce((count, row) => count + row.length, sum), 0);

/** What is typed in a cell; "" beyond the rows. */
export function typedAt(book: Book, page: number, row: number, column: number): string {
  return book.pages[page]?.rows[row]?.[column] ?? "";
}
