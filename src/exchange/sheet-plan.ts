/** Which sheets of a file become pages, under which titles, and whether their first lines are headings. */
import { phrase, plural } from "../../functions/phrase.ts";
import { LONGEST, MOST_COLUMNS, MOST_PAGES, MOST_ROWS } from "../book/shape.ts";
import { counted } from "./cell-report.ts";
import type { ForeignBook, ForeignSheet } from "./foreign-book.ts";
import { isDataText, isHeadingLine } from "./heading-line.ts";
import type { OwnMark } from "./own-mark.ts";
import type { SheetForm, TableForm } from "./table-form.ts";

/** How a sheet was understood before its cells are written. */
export interface Planned {
  readonly sheet: ForeignSheet;
  readonly index: number;
  readonly form: SheetForm;
  readonly take: boolean;
  readonly headings: boolean;
  /** The page's title, free of the signs that a title can't have. */
  readonly title: string;
  readonly page: number | null;
  readonly wide: number;
  readonly tall: number;
  readonly refused: string | null;
}

/** A sheet's title as that of a page. */
const pageTitle = (text: string): string =>
  text
    .replace(/[[\]:*?/\\']|\p{Cc}/gu, " ")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, LONGEST.pageTitle - 5) || "Sheet";

/** `own`: what a file of Ellwand's own says of its book; its last sheet, the workings, becomes a page only when `workings` says so. */
export function plan(
  { sheets }: ForeignBook,
  form: TableForm,
  own: OwnMark | null,
  workings: boolean,
): Planned[] {
  const used = new Set<string>();
  let pages = 0;
  return sheets.map((sheet, index): Planned => {
    const tall = sheet.rows.findLastIndex((row) => row.some((cell) => cell !== undefined)) + 1;
    const marked = own?.pages[index];
    const wide = sheet.rows.reduce(
      (most, row) => Math.max(most, row.findLastIndex((cell) => cell !== undefined) + 1),
      marked?.columns.length ?? 0,
    );
    const own_ = form.sheets?.[index] ?? {};
    const headings = own_.headings ?? (own ? marked !== undefined : hasHeadings(sheet, wide));
    const refused = sizeFault(tall - (headings ? 1 : 0), wide);
    const take = own_.take ?? (own ? marked !== undefined || workings : tall > 0);
    const first = pageTitle(marked?.title ?? sheet.title);
    let title = first;
    for (let i = 2; used.has(title.toLowerCase()); i += 1)
      title = `${first.slice(0, LONGEST.pageTitle - 8)} ${i}`;
    used.add(title.toLowerCase());
    const fits = take && (tall > 0 || marked !== undefined) && refused === null && pages < MOST_PAGES;
    const page = fits ? pages : null;
    if (fits) pages += 1;
    return {
      sheet, index, form: own_, take: page !== null, headings, title, page, wide, tall,
      refused: take && refused === null && tall > 0 && page === null ? tooManyPages() : refused,
    }; // biome-ignore format: a list
  });
}

/** Why a sheet beyond the last page is left out. */
const tooManyPages = (): string => phrase`a book has at most ${MOST_PAGES} pages`;

/** The sheets that are left out because the book has as many pages as it may have, in a sentence. */
export function leftOutSheets(planned: readonly Planned[]): string[] {
  const beyond = planned.filter(({ refused }) => refused === tooManyPages());
  return beyond.length === 0
    ? []
    : [
        phrase`${counted(beyond.length)} ${plural(beyond.length, "sheet is", "sheets are")} left out, from “${beyond[0]!.sheet.title}” on, because ${tooManyPages()}: choose which to take, or save the others as a file of their own.`,
      ];
}

function sizeFault(tall: number, wide: number): string | null {
  if (wide > MOST_COLUMNS)
    return phrase`it has ${counted(wide)} ${plural(wide, "column", "columns")}, and a page holds at most ${MOST_COLUMNS}; leave out columns, or save them as sheets of their own`;
  return tall > MOST_ROWS
    ? phrase`it has ${counted(tall)} ${plural(tall, "row", "rows")}, and a page holds at most ${MOST_ROWS.toLocaleString("en")}; save them as sheets of their own`
    : null;
}

/** Whether the first line of a sheet holds its headings. A line with merged cells does not. */
function hasHeadings({ rows, merged }: ForeignSheet, wide: number): boolean {
  if (merged.some(({ top }) => top === 0)) return false;
  const first = Array.from({ length: wide }, (_, i) => {
    const cell = rows[0]?.[i];
    return cell?.as === "text" && cell.formula === undefined ? String(cell.value) : null;
  });
  const isData = (cell: ForeignSheet["rows"][number][number]) =>
    cell !== undefined && (cell.as !== "text" || isDataText(String(cell.value)));
  return isHeadingLine(first, wide, () => rows.some((row, i) => i > 0 && row.some(isData)));
}

/** The headings of a sheet as texts; empty without a line of headings. */
export const headingsOf = ({
  sheet,
  headings,
  wide,
}: Pick<Planned, "sheet" | "headings" | "wide">): string[] =>
  headings ? Array.from({ length: wide }, (_, i) => String(sheet.rows[0]?.[i]?.value ?? "").trim()) : [];
