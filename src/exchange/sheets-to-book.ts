/** The sheets of a spreadsheet file as the pages of a book: values, formulas that stay alive, names, notes, choices. */

import type { Decimal } from "../../functions/decimal.ts";
import { DEFAULT_MARK } from "../../functions/fractions.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import type { Unit } from "../../functions/units.ts";
import { cellAddress, columnLetters, placeKey, rowAndColumn } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { withHidden } from "../book/hidden-rows.ts";
import {
  type Book,
  blankBook,
  type CellSettings,
  LONGEST,
  MOST_CELLS,
  MOST_FROZEN,
  type Page,
} from "../book/shape.ts";
import { understand } from "../engine/content.ts";
import { addresses, CellReport, counted } from "./cell-report.ts";
import type { ForeignBook, ForeignCell } from "./foreign-book.ts";
import { bookFormula } from "./foreign-formula.ts";
import { unitOfHeadings, unitSaid } from "./heading-unit.ts";
import { columnOf, landedChoices } from "./landed-columns.ts";
import { type LandedNames, landedNames, placesOf } from "./landed-references.ts";
import type { OwnMark } from "./own-mark.ts";
import { headingsOf, leftOutSheets, type Planned, plan } from "./sheet-plan.ts";
import type { TableForm, UnderstoodSheet } from "./table-form.ts";
import { typedText } from "./typed-text.ts";

/** A formula that came alive: where it stands, and the value that the file has for it. */
export interface Revived {
  readonly page: number;
  readonly row: number;
  readonly column: number;
  readonly cell: ForeignCell;
}

/** A file of Ellwand's own: what it says of its book, and the formulas as they were typed, where these are believed. */
export interface OwnPages {
  readonly mark: OwnMark;
  readonly originals?: ReadonlyMap<string, string>;
}

/** The book, before its formulas are compared with the values of the file. */
export interface Laidout {
  readonly book: Book;
  readonly sheets: readonly UnderstoodSheet[];
  readonly revived: readonly Revived[];
  readonly said: readonly string[];
}

/** The pages of the sheets that are taken; a sentence when no sheet can be. */
export function sheetsToBook(
  file: ForeignBook,
  title: string,
  { decimal: given, unit: usual }: { readonly decimal: Decimal | null; readonly unit: Unit },
  form: TableForm,
  own: OwnPages | null = null,
): Laidout | { readonly refusal: string } {
  const planned = plan(file, form, own?.mark ?? null, own !== null && own.originals === undefined);
  const taken = planned.filter(({ page }) => page !== null);
  if (taken.length === 0) return { refusal: whyNone(planned) };
  const cells = taken.reduce(
    (sum, { sheet }) => sum + sheet.rows.reduce((count, row) => count + row.length, 0),
    0,
  );
  if (cells > MOST_CELLS)
    return {
      refusal: phrase`it has ${cells.toLocaleString("en")} cells, and a book holds at most ${MOST_CELLS.toLocaleString("en")}; save its sheets as separate files`,
    };
  const headings = taken.flatMap(headingsOf);
  const decimal = given ?? own?.mark.decimal ?? "point";
  const unit = form.unit ?? own?.mark.unit ?? unitOfHeadings(headings) ?? usual;
  const names = landedNames(file, planned);
  const revived: Revived[] = [];
  const done = planned.map((one) => {
    if (one.page === null) return { one, page: null, said: one.refused === null ? [] : [one.refused] };
    return { one, ...pageOf(file, one, planned, names.spelt, unit, decimal, revived, own) };
  });
  const pages = done.flatMap(({ page }) => (page ? [page] : []));
  const book: Book = {
    ...blankBook(title, unit, own?.mark.unit === unit ? own.mark.mark : DEFAULT_MARK[unit]),
    ...(decimal === "comma" && { decimal }),
    about: (file.about ?? "").slice(0, LONGEST.about),
    names: names.books,
    pages: pages.map((page, i) => {
      const own = names.pages.get(i);
      return own ? { ...page, names: own } : page;
    }),
  };
  const sheets = done.map(({ one, said }): UnderstoodSheet => ({
    sheet: one.index, title: one.title, take: one.take, headings: one.headings, rows: one.tall, columns: one.wide,
    page: one.page, said,
  })); // biome-ignore format: a list
  return {
    book,
    sheets,
    revived,
    said: [
      ...saidOf(file, own !== null),
      ...leftOutSheets(planned),
      ...unitSaid(headings, unit, hasLengths(book), form.unit !== undefined),
      ...names.said,
    ],
  };
}

const hasLengths = ({ pages }: Book): boolean =>
  pages.some(({ columns }) => columns.some(({ kind }) => kind === "length"));

function whyNone(planned: readonly Planned[]): string {
  const refused = planned.find((one) => one.refused !== null);
  if (refused) return phrase`the sheet “${refused.sheet.title}”: ${refused.refused ?? ""}`;
  return planned.some(({ tall }) => tall > 0)
    ? phrase`no sheet is chosen; choose one`
    : phrase`its sheets are empty: there is nothing to read`;
}

const saidOf = ({ macros, elsewhere, signs, sheets }: ForeignBook, own: boolean): string[] => {
  const links = sheets.reduce((sum, sheet) => sum + sheet.links, 0);
  return [
    own
      ? phrase`It is a spreadsheet of ISO/IEC ${signs} that Ellwand wrote, with ${counted(sheets.length)} ${plural(sheets.length, "sheet", "sheets")}.`
      : phrase`It is a spreadsheet of ISO/IEC ${signs}, with ${counted(sheets.length)} ${plural(sheets.length, "sheet", "sheets")}.`,
    ...(macros ? [phrase`It has macros: they are not read and not run.`] : []),
    ...(elsewhere ? [phrase`It refers to other files: they are not opened.`] : []),
    ...(links > 0
      ? [
          phrase`${counted(links)} ${plural(links, "link is", "links are")} not kept; ${plural(links, "its text is", "their texts are")}.`,
        ]
      : []),
  ];
};

/** Why a formula is not calculated here, as the note of its cell. */
export const keptNote = (formula: string, why: string): string =>
  `In the file: =${formula}\nIt is not calculated here, because ${why}; the last value of the file is kept.`.slice(
    0,
    LONGEST.note,
  );

function pageOf(
  file: ForeignBook,
  own: Planned,
  planned: readonly Planned[],
  spelt: LandedNames["spelt"],
  unit: Unit,
  decimal: Decimal,
  revived: Revived[],
  of: OwnPages | null,
): { readonly page: Page; readonly said: readonly string[] } {
  const { sheet, headings, form, wide, title } = own;
  const marked = of?.mark.pages[own.index];
  const shift = headings ? 1 : 0;
  const body = sheet.rows.slice(shift, own.tall);
  const report = new CellReport();
  const notes: Record<string, string> = {};
  const noted = (address: string, text: string) => {
    notes[address] = (notes[address] === undefined ? text : `${notes[address]}\n${text}`).slice(
      0,
      LONGEST.note,
    );
  };
  for (const [address, text] of sheet.notes) {
    const { row, column } = rowAndColumn(address)!;
    if (row < shift) report.add("heading-note", address);
    else noted(cellAddress(row - shift, column), text);
  }
  const columns = Array.from({ length: wide }, (_, i) =>
    columnOf(sheet, body, i, headings, form.kinds?.[i], unit, marked?.columns[i]),
  );
  const places = placesOf(planned, own, spelt);
  const rows = body.map((cells, row) => {
    const length = cells.findLastIndex((cell) => cell !== undefined) + 1;
    return Array.from({ length }, (_, column) => {
      const cell = cells[column];
      if (!cell) return "";
      const address = cellAddress(row, column);
      const original = of?.originals?.get(placeKey({ page: own.page!, row, column }));
      // A figure is understood by the decimal mark that it was typed with.
      const isReadable =
        original !== undefined && (isFormula(original) || decimal === (of?.mark.decimal ?? "point"));
      if (isReadable) return original;
      if (cell.as === "money") report.add("currency", address);
      if (cell.formula !== undefined) {
        const written = bookFormula(cell.formula, file.signs, places);
        if ("text" in written && written.text.length <= LONGEST.typed) {
          revived.push({ page: own.page!, row, column, cell });
          return written.text;
        }
        report.add("formula-as-value", address);
        noted(address, keptNote(cell.formula, "why" in written ? written.why : phrase`it is too long`));
      }
      const typed = typedText(cell, decimal);
      if (typed.lost) report.add(typed.lost, address);
      if (typed.note) noted(address, typed.note);
      if (cell.as === "text" && columns[column]!.kind !== "text") {
        const { is } = understand(typed.text, columns[column]!.kind, unit, decimal);
        if (is !== "text" && is !== "blank")
          report.add("text-as-value", `${address} “${typed.text.slice(0, 20)}”`);
      }
      return typed.text;
    });
  });
  const settings = landedChoices(file, own, columns.length, rows.length, places, report);
  const cells: Record<string, CellSettings> = { ...settings.cells };
  for (const [address, fitting] of Object.entries(marked?.fittings ?? {})) {
    const at = rowAndColumn(address);
    if (at && of?.originals?.has(placeKey({ page: own.page!, ...at })))
      cells[address] = { ...cells[address], fitting };
  }
  const page: Page = {
    title,
    stage: marked?.stage ?? "Measure",
    columns: columns.map((column, i) => ({
      ...column,
      ...(settings.columns[i] !== undefined && { choices: settings.columns[i] }),
    })),
    rows,
    notes,
    ...(Object.keys(cells).length > 0 && { cells }),
    ...(sheet.frozen > 0 && { frozen: Math.min(sheet.frozen, MOST_FROZEN) }),
  };
  return {
    page: withHidden(
      page,
      [...sheet.hiddenRows].map((row) => row - shift).filter((row) => row >= 0 && row < rows.length),
    ),
    said: saidOfSheet(own, report),
  };
}

function saidOfSheet({ sheet, title, headings, wide }: Planned, report: CellReport): string[] {
  const hidden = [...sheet.hiddenColumns].filter((column) => column < wide).map(columnLetters);
  const merged = sheet.merged.map(({ top, left, bottom, right }) => `${cellAddress(top, left)}:${cellAddress(bottom, right)}`);
  return [
    headings ? phrase`The first line is taken for the headings, so row 2 of the file is row 1 of the page.` : phrase`No line is taken for headings.`,
    ...(title === sheet.title ? [] : [phrase`Its title in the file is “${sheet.title.slice(0, 100)}”.`]),
    ...(sheet.hidden ? [phrase`It was hidden in the file.`] : []),
    ...(merged.length > 0 ? [phrase`${counted(merged.length)} ${plural(merged.length, "block", "blocks")} of merged cells ${plural(merged.length, "is", "are")} separated again; the value is in the first cell: ${addresses(merged)} of the file.`] : []),
    ...(hidden.length > 0 ? [phrase`${counted(hidden.length)} ${plural(hidden.length, "hidden column is", "hidden columns are")} shown: ${addresses(hidden)}.`] : []),
    ...report.sentence("formula-as-value", (count, where) => phrase`${counted(count)} ${plural(count, "formula", "formulas")} can't be calculated here and ${plural(count, "is", "are")} kept as the last value, with the formula in a note: ${where}.`),
    ...report.sentence("text-as-value", (count, where) => phrase`${counted(count)} ${plural(count, "text", "texts")} of the file ${plural(count, "reads as a number or a date", "read as numbers or dates")}: ${where}. Set the kind of the column to text to keep ${plural(count, "it as it is", "them as they are")}.`),
    ...report.sentence("like a formula", (count, where) => phrase`${counted(count)} ${plural(count, "text", "texts")} that ${plural(count, "begins", "begin")} with = got ' before it, so that nothing is calculated from it: ${where}.`),
    ...report.sentence("time", (count, where) => phrase`${counted(count)} ${plural(count, "time", "times")} of day ${plural(count, "is", "are")} kept as text: ${where}.`),
    ...report.sentence("time-of-day", (count, where) => phrase`${counted(count)} ${plural(count, "date", "dates")} had a time of day, which is in a note: ${where}.`),
    ...report.sentence("currency", (count, where) => phrase`${counted(count)} ${plural(count, "amount", "amounts")} of money ${plural(count, "is", "are")} kept as ${plural(count, "a plain number", "plain numbers")}, without the sign of the currency: ${where}.`),
    ...report.sentence("error", (count, where) => phrase`${counted(count)} ${plural(count, "error", "errors")} of the file ${plural(count, "is", "are")} kept as text: ${where}.`),
    ...report.sentence("cut", (count, where) => phrase`${counted(count)} ${plural(count, "text is", "texts are")} longer than ${LONGEST.typed.toLocaleString("en")} characters and ${plural(count, "is", "are")} cut: ${where}.`),
    ...report.sentence("heading-note", (count, where) => phrase`${counted(count)} ${plural(count, "note", "notes")} on headings ${plural(count, "is", "are")} left out: ${where} of the file.`),
    ...report.sentence("choices", (count, where) => phrase`${counted(count)} ${plural(count, "list", "lists")} of choices can't be kept: ${where}.`),
    ...(sheet.ignored.length > 0 ? [phrase`Left out: ${sheet.ignored.join(", ")}.`] : []),
  ];
} // biome-ignore format: sentences
