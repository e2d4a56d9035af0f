/** The columns of a page that comes from a sheet: headings, kinds, widths, and what their cells are chosen from. */
import type { Unit } from "../../functions/units.ts";
import { cellAddress } from "../book/address.ts";
import { type CellSettings, type Column, type ColumnKind, LONGEST, WIDTHS } from "../book/shape.ts";
import type { CellReport } from "./cell-report.ts";
import { columnWidth } from "./column-width.ts";
import type { ForeignBook, ForeignChoices, ForeignSheet, Rectangle } from "./foreign-book.ts";
import { bookFormula, foreignParts, type Places } from "./foreign-formula.ts";
import { losesAsFigure } from "./heading-line.ts";
import { headingUnit, headingWithout } from "./heading-unit.ts";
import type { Planned } from "./sheet-plan.ts";

export function columnOf(
  sheet: ForeignSheet,
  body: ForeignSheet["rows"],
  index: number,
  headings: boolean,
  given: ColumnKind | undefined,
  unit: Unit,
  marked?: readonly [heading: string, kind: ColumnKind],
): Column {
  const whole = headings ? String(sheet.rows[0]?.[index]?.value ?? "").trim() : "";
  const named = headingUnit(whole);
  const heading = headingWithout(whole, unit).slice(0, LONGEST.heading);
  const width = sheet.widths.get(index) ?? columnWidth(heading, textsOf(body, index));
  return {
    heading,
    kind: given ?? (marked?.[0] === heading ? marked[1] : undefined) ?? kindOf(body, index, named === unit),
    width: Math.min(WIDTHS[1], Math.max(WIDTHS[0], width)),
  };
}

/** The texts of a column, no more of each than counts for its width. */
const textsOf = (body: ForeignSheet["rows"], index: number): string[] =>
  body.slice(0, 200).map((row) => String(row[index]?.value ?? "").slice(0, 60));

function kindOf(body: ForeignSheet["rows"], index: number, isLength: boolean): ColumnKind {
  const counts = { all: 0, figures: 0, date: 0, money: 0, fraction: 0, text: 0, loses: 0 };
  for (const row of body) {
    const cell = row[index];
    if (!cell) continue;
    counts.all += 1;
    if (typeof cell.value === "number") counts.figures += 1;
    if (cell.as === "date" || cell.as === "money" || cell.as === "fraction" || cell.as === "text")
      counts[cell.as] += 1;
    if (cell.as === "text" && cell.formula === undefined && losesAsFigure(String(cell.value)))
      counts.loses += 1;
  }
  if (counts.text === counts.all) return counts.loses > 0 ? "text" : isLength ? "length" : "any";
  if (isLength) return "length";
  if (counts.date === counts.all) return "date";
  if (counts.money > 0 && counts.money === counts.figures) return "money";
  return counts.fraction * 2 > counts.figures && counts.date === 0 ? "length" : "any";
}

/** The most cells with choices of their own that are kept one by one, for a block that is not a whole column. */
const MOST_CHOOSING = 5000;

export function landedChoices(
  file: ForeignBook,
  { sheet, headings, page }: Planned,
  wide: number,
  tall: number,
  places: Places,
  report: CellReport,
): {
  readonly columns: readonly (string | undefined)[];
  readonly cells: Readonly<Record<string, CellSettings>>;
} {
  const columns: (string | undefined)[] = [];
  const cells: Record<string, CellSettings> = {};
  const shift = headings ? 1 : 0;
  for (const { where, list } of sheet.choices) {
    const written = choicesText(file, list, places);
    const address = `${cellAddress(where.top, where.left)}:${cellAddress(where.bottom, where.right)}`;
    if (
      "why" in written ||
      written.text.length > LONGEST.choices ||
      page === null ||
      !/\S/.test(written.text)
    ) {
      report.add("choices", address);
      continue;
    }
    const { top, left, bottom, right }: Rectangle = {
      ...where,
      top: where.top - shift,
      bottom: where.bottom - shift,
    };
    for (let column = left; column <= Math.min(right, wide - 1); column += 1) {
      if (top <= 0 && bottom >= tall - 1) columns[column] = written.text;
      else if (bottom - top < MOST_CHOOSING)
        for (let row = Math.max(0, top); row <= Math.min(bottom, tall - 1); row += 1)
          cells[cellAddress(row, column)] = { choices: written.text };
      else report.add("choices", address);
    }
  }
  return { columns, cells };
}

/** Choices as a book writes them; the words themselves where they stand on a sheet that is left out. */
function choicesText(
  file: ForeignBook,
  list: ForeignChoices["list"],
  places: Places,
): { readonly text: string } | { readonly why: string } {
  if (!("formula" in list)) return { text: list.join("; ") };
  const written = bookFormula(list.formula, file.signs, places);
  // Cells to choose from stay the same for every cell of the column, so that a book needs no $ in them.
  if ("text" in written)
    return { text: written.text.replace(CELLS_ALONE, (text) => text.replaceAll("$", "")) };
  const [part, ...rest] = foreignParts(list.formula, file.signs);
  if (part?.is !== "reference" || rest.length > 0 || part.sheet === null) return written;
  const sheet = file.sheets.find(({ title }) => title === part.sheet);
  const { from, to = from } = part;
  if (!sheet || from.column !== to?.column || from.column === null) return written;
  const words = sheet.rows
    .slice(from.row ?? 0, (to.row ?? MOST_WORDS) + 1)
    .slice(0, MOST_WORDS)
    .map((row) => String(row[from.column!]?.value ?? "").trim())
    .filter((word) => word !== "");
  return words.length === 0 || words.some((word) => word.includes(";"))
    ? written
    : { text: words.join("; ") };
}

/** A formula that is nothing but cells, behind the title of their page. */
const CELLS_ALONE = /(?<=^=(?:'(?:[^']|'')+'!|[^!$'"(]+!)?)\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/;

/** The most words that are read from cells. */
const MOST_WORDS = 500;
