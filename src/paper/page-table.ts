/** A page of the book as a table for paper: its values as the tape shows them, and remarks about them. */

import type { Point } from "../../functions/geometry/strokes.ts";
import type { LayOrigin } from "../../functions/lay.ts";
import { phrase, plural } from "../../functions/phrase.ts";
import { flattenPiece, pieceBounds, readPiece } from "../../functions/pieces/piece.ts";
import type { Place } from "../book/address.ts";
import { columnLetters, noteAt } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { hiddenRows } from "../book/hidden-rows.ts";
import type { Page } from "../book/shape.ts";
import { besideText } from "../engine/beside-answer.ts";
import { careText, cautionsAt } from "../engine/cautions.ts";
import { isListHeading } from "../engine/columns-read.ts";
import type { Engine } from "../engine/engine.ts";
import { ESTIMATE_SAYS, ESTIMATE_SIGN, estimatesAt } from "../engine/estimates.ts";
import { FITTED_SAYS, FITTED_SIGN, fittedText } from "../engine/fitted-text.ts";
import { LAID_SIGNS, laidSign } from "../engine/laid.ts";
import { laysBelow } from "../engine/lays-below.ts";
import type { CellView } from "../engine/view.ts";
import type { Table, TableCell, TableRow } from "./table.ts";

/** The sign beside a value that has a sentence beneath its row. */
const SIGN = "▲";

export interface PageTable {
  readonly table: Table;
  /** What stands beneath the table: what its signs mean, and which rows are not in it. */
  readonly remarks: readonly string[];
  /** How many cells have a problem. */
  readonly problems: number;
}

export interface PageTableOptions {
  /** Leaves out the figures and leaves room to write them. */
  readonly blank?: boolean;
  /** A last column of boxes to tick: in the rows with a worked-out figure, or in all where no row has one. */
  readonly tick?: boolean;
}

const headingOf = ({ columns }: Page, column: number): string =>
  columns[column]?.heading.trim() || phrase`column ${columnLetters(column)}`;

/** The heading over a cell: of a column without one, that of the list on the page in which the cell stands. */
function headingOver(page: Page, row: number, column: number): string {
  const isOfPage = (page.columns[column]?.heading.trim() ?? "") !== "";
  for (let above = row - 1; above >= 0 && !isOfPage; above -= 1) {
    const cells = page.rows[above]!;
    if (cells.filter(isListHeading).length >= 2) return cells[column]?.trim() || headingOf(page, column);
  }
  return headingOf(page, column);
}

/** What a cell shows on paper, and what stands beneath its row. */
export interface PaperCell extends TableCell {
  readonly note: string | null;
  readonly origin: LayOrigin | null;
  /** What is to be read beside the answer, in a sentence; "" when it says all. */
  readonly beside: string;
}

/** The outline of a piece for a small picture. Returns null when the value is not a piece. */
export function smallOutline({ kind, value }: CellView): readonly Point[] | null {
  if (typeof value !== "string" || (kind !== "piece" && !/^\s*M[\s\d.-]/.test(value))) return null;
  try {
    const piece = readPiece(value);
    const { left, right, low, high } = pieceBounds(piece);
    return flattenPiece(piece, Math.max(right - left, high - low) / 200);
  } catch {
    return null;
  }
}

/** `called` is what the cell is called in the sentence beneath its row. */
export function paperCell(engine: Engine, place: Place, called: string): PaperCell {
  const view = engine.view(place);
  const { problem, origin: own, worked } = view;
  const outline = smallOutline(view);
  const below = own || !worked || view.kind === "piece" ? [] : laysBelow(engine, place);
  const origin = own ?? below[0]?.origin ?? null;
  const isEstimate = typeof view.value === "number" && estimatesAt(engine, place).length > 0;
  const laid = origin && typeof view.value === "number" ? `${laidSign(origin)} ` : "";
  const isFitted = fittedText(engine, place) !== "";
  const sign = `${laid}${isEstimate ? `${ESTIMATE_SIGN} ` : ""}${isFitted ? `${FITTED_SIGN} ` : ""}`;
  // For translators: it stands in place of a value that is not right: look at it.
  const shown = problem?.is === "verdict" ? phrase`check` : view.shown;
  const text = `${sign}${shown}`;
  return {
    text: problem ? `${text} ${SIGN}`.trim() : text,
    ...(outline && { outline }),
    note: problem ? `${SIGN} ${called}: ${problem.sentence}` : null,
    origin,
    beside: worked && view.value !== null && view.value !== "" ? besideText(engine, place) : "",
  };
}

/** The remarks that say what the signs of lays, estimates and fitted figures mean. */
export const signRemarks = (signs: ReadonlySet<string>): string[] =>
  [...LAID_SIGNS, [ESTIMATE_SIGN, ESTIMATE_SAYS] as const, [FITTED_SIGN, FITTED_SAYS] as const]
    .filter(([sign]) => signs.has(sign))
    .map(([sign, says]) => `${sign}  ${says}`);

export function pageTable(
  engine: Engine,
  number: number,
  { blank = false, tick = false }: PageTableOptions = {},
): PageTable {
  const page = engine.book.pages[number]!;
  const hidden = hiddenRows(page);
  const filled = page.rows.map((row) => row.flatMap((typed, i) => (typed.trim() === "" ? [] : [i])));
  /** A line of formulas that answer with nothing, such as one of a table that is still to be filled. */
  const isIdle = (row: number) =>
    filled[row]!.every((column) => {
      const view = engine.view({ page: number, row, column });
      return view.worked && view.value === "" && !view.problem;
    });
  const rows = filled.flatMap((columns, row) =>
    columns.length > 0 && !hidden.has(row) && !isIdle(row) ? [row] : [],
  );
  const typed = (row: number, column: number): string => page.rows[row]![column] ?? "";
  /** A row of words over others; on a page without a figure every row is still to be filled. */
  const isBare = rows.every((row) => filled[row]!.every((column) => column === 0));
  const isHeading = (row: number) =>
    !isBare && filled[row]!.join() === "0" && !isFormula(typed(row, 0)) && page.columns.length > 1;
  const isResult = (row: number) => filled[row]!.slice(1).some((column) => isFormula(typed(row, column)));
  const hasWorked = rows.some(isResult);
  const isWorked = (row: number) => filled[row]!.slice(1).every((column) => isFormula(typed(row, column)));

  const kept = blank ? rows.filter((row) => isHeading(row) || isBare || !isWorked(row)) : rows;
  // A heading over rows that are left out is left out with them.
  const shown = kept.filter(
    (row, i) => !isHeading(row) || (i + 1 < kept.length && !isHeading(kept[i + 1]!)) || !blank,
  );
  const columns = page.columns.flatMap((_, column) => {
    if (column === 0 || (blank && isBare)) return [column];
    const cells = shown.filter((row) => typed(row, column).trim() !== "");
    if (cells.length === 0) return [];
    return blank && cells.every((row) => isFormula(typed(row, column))) ? [] : [column];
  });
  const signs = new Set<string>();
  let problems = 0;

  const rowOf = (row: number): TableRow => {
    if (isHeading(row))
      return { cells: [{ text: engine.view({ page: number, row, column: 0 }).shown }], notes: [] };
    const notes: string[] = [];
    const beside = new Map<string, string[]>();
    const cells = columns.map((column): TableCell => {
      const written = noteAt(engine.book, { page: number, row, column }).trim();
      if (written !== "")
        notes.push(
          column === 0 ? phrase`Note: ${written}` : phrase`${headingOf(page, column)}, note: ${written}`,
        );
      if (blank && column > 0) return blankCell(page, row, column);
      const called = column === 0 ? phrase`this row` : headingOver(page, row, column);
      const {
        note,
        origin,
        beside: said,
        ...cell
      } = paperCell(engine, { page: number, row, column }, called);
      if (said !== "") beside.set(said, [...(beside.get(said) ?? []), called]);
      if (note) {
        notes.push(note);
        problems += 1;
      }
      if (origin && /^[≈≤✓✎]/.test(cell.text)) signs.add(laidSign(origin));
      for (const sign of [ESTIMATE_SIGN, FITTED_SIGN]) if (cell.text.includes(`${sign} `)) signs.add(sign);
      return cell;
    });
    // The two sides of a seam often say the same, and its verdict says it once more.
    for (const [said, called] of beside)
      if (![...beside.keys()].some((other) => other !== said && said.endsWith(other)))
        notes.push(`${called.join(", ")}: ${said}`);
    return { cells: tick ? [...cells, { text: !hasWorked || isResult(row) ? "□" : "" }] : cells, notes };
  };
  const placesOf = (of: readonly number[], across: readonly number[]): Place[] =>
    of.flatMap((row) => across.map((column) => ({ page: number, row, column })));
  const left = rows.length - kept.length;
  const concealed = filled.filter((one, row) => one.length > 0 && hidden.has(row)).length;
  return {
    table: {
      headings: [...columns.map((column) => headingOf(page, column)), ...(tick ? [phrase`Done`] : [])],
      rows: shown.map(rowOf),
      ...(blank && { least: 9 }),
    },
    remarks: [
      ...signRemarks(signs),
      ...(blank ? [phrase`Grey cells are worked out by the book and are not to be filled.`] : []),
      ...(blank ? [] : cautionsAt(engine, placesOf(shown, columns)).map(careText)),
      ...(left > 0
        ? [
            phrase`${plural(left, "# row of worked-out figures is", "# rows of worked-out figures are")} not on this form.`,
          ]
        : []),
      ...(concealed > 0
        ? [
            phrase`${plural(concealed, "# row hidden on the page is", "# rows hidden on the page are")} not printed.`,
          ]
        : []),
    ],
    problems,
  };
}

/** How many values have a sentence beneath their row; empty where none has. */
export const toCheckBeneath = (problems: number): string[] =>
  problems > 0
    ? [
        phrase`${plural(problems, "# value has", "# values have")} something to check, which is printed beneath the row`,
      ]
    : [];

/** On a form: words stay, a figure makes room for another, and what is worked out is grey. */
function blankCell(page: Page, row: number, column: number): TableCell {
  const text = page.rows[row]![column] ?? "";
  if (isFormula(text)) return { text: "", ground: "grey" };
  const isWords = page.columns[column]!.kind === "text" && /\p{L}/u.test(text);
  return isWords ? { text } : { text: "", ground: "write" };
}
