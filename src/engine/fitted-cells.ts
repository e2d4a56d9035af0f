/**
 * Cells that follow the fittings. What is typed in such a cell stays as it is; the engine is given a formula
 * that adds the net change of a seam to it, so that all that rests on the cell follows.
 */

import { withDecimalMark } from "../../functions/decimal.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import { cellAddress, type Place, rowAndColumn } from "../book/address.ts";
import { LOG_NAME, readFitting, SEAMS_NAME } from "../book/fitting.ts";
import { isFormula } from "../book/formula.ts";
import { namesMeant } from "../book/names.ts";
import type { Book, Page } from "../book/shape.ts";
import { understand } from "./content.ts";

/** What a cell's settings say about its fitting changes; undefined when they say nothing. */
export const fittingOf = (book: Book, { page, row, column }: Place): string | undefined =>
  book.pages[page]?.cells?.[cellAddress(row, column)]?.fitting;

/** Why a cell can't follow its fittings whatever the log says, in a sentence; null when it can. */
export function fittingFault(book: Book, place: Place): string | null {
  const setting = fittingOf(book, place);
  if (setting === undefined || namesMeant(book, LOG_NAME, place.page).length > 0) return null;
  return phrase`this cell follows the fittings of "${setting}", and the book has no list named ${LOG_NAME}: give the fitting log that name, headings included`;
}

const pagesWorked = rememberWithObject<Page, { from: string; page: Page }>();

/** The book as the engine calculates it. Pages and rows without cells that follow the fittings stay the same objects. */
export function workedBook(book: Book): Book {
  if (!book.pages.some(hasFittings)) return book;
  return { ...book, pages: book.pages.map((page, index) => workedPage(book, page, index)) };
}

const hasFittings = ({ cells }: Page): boolean =>
  cells !== undefined && Object.values(cells).some(({ fitting }) => fitting !== undefined);

function workedPage(book: Book, page: Page, index: number): Page {
  if (!hasFittings(page)) return page;
  const seams = namesMeant(book, SEAMS_NAME, index).length > 0;
  const from = `${seams} ${book.unit} ${book.decimal ?? "point"}`;
  const kept = pagesWorked(page, () => ({ from: "", page }));
  if (kept.from === from) return kept.page;
  const rows = [...page.rows];
  for (const [address, { fitting }] of Object.entries(page.cells!)) {
    const at = rowAndColumn(address);
    if (fitting === undefined || !at) continue;
    const { row, column } = at;
    const typed = rows[row]?.[column];
    if (!typed || typed.trim() === "") continue;
    const formula = withChange(typed, fitting, seams, book, page.columns[column]?.kind ?? "any");
    rows[row] = rows[row]!.with(column, formula);
  }
  kept.from = from;
  kept.page = { ...page, rows };
  return kept.page;
}

/** What is typed with the net change of a seam added to it. */
function withChange(
  typed: string,
  setting: string,
  seams: boolean,
  { unit, decimal }: Book,
  kind: Page["columns"][number]["kind"],
): string {
  const read = readFitting(setting);
  // A file may hold a setting that names no seam: the function refuses it, and its sentence quotes the setting.
  const fitting = "fault" in read ? { seam: setting, end: null, eachSide: false } : read;
  const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
  const content = isFormula(typed) ? null : understand(typed, kind, unit, decimal);
  const taken = !content
    ? `(${typed.trim().slice(1)})`
    : content.is === "length" || content.is === "number"
      ? withDecimalMark(String(content.value), decimal)
      : quoted(typed);
  const rest = [
    seams ? SEAMS_NAME : "",
    fitting.end ? quoted(fitting.end) : "",
    fitting.eachSide ? quoted("each side") : "",
  ];
  const args = [LOG_NAME, quoted(fitting.seam), ...rest].join(";").replace(/;+$/, "");
  return `=FITTED(${taken};FITTING_CHANGE(${args}))`;
}
