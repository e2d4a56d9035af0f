/** A page of a book as comma-separated values: RFC 4180, UTF-8, no text that a spreadsheet would work out. */
import { withDecimalMark } from "../../functions/decimal.ts";
import { numberText } from "../../functions/number-text.ts";
import type { Place } from "../book/address.ts";
import { csvText } from "../engine/csv.ts";
import type { Engine } from "../engine/engine.ts";
import { estimatesAt } from "../engine/estimates.ts";
import { fittedText } from "../engine/fitted-text.ts";
import { hasAnswer } from "../engine/sentences.ts";
import { dayText, show } from "../engine/show.ts";
import type { CellView } from "../engine/view.ts";

/** "shown": as the page shows the cells; "full": figures with all their places, pieces as their outlines. */
export type Figures = "shown" | "full";

/**
 * The headings of a page, when it has any, then its rows, each with all columns. A cell that has no answer is
 * written as "check: " with the reason. Blank rows at the end are left out.
 */
export function pageCsv(engine: Engine, page: number, figures: Figures): string {
  const { columns, rows } = engine.book.pages[page]!;
  const text = figures === "full" ? inFull : asShown;
  const width = rows.reduce((most, row) => Math.max(most, row.length), columns.length);
  const across = Array.from({ length: width }, (_, column) => column);
  const cells = rows.map((_, row) =>
    across.map((column) => text(engine.view({ page, row, column }), engine, { page, row, column })),
  );
  const end = cells.findLastIndex((line) => line.some((cell) => cell !== "")) + 1;
  const headings = across.map((column) => columns[column]?.heading ?? "");
  const first = headings.some((heading) => heading !== "") ? [headings] : [];
  return csvText([...first, ...cells.slice(0, end)]);
}

const unanswered = ({ problem }: CellView): string | null =>
  problem && !hasAnswer(problem) ? `check: ${problem.sentence}` : null;

/** An estimate and a fitted figure say that they are; with its figures in full a file is for other programs, which need bare numbers. */
function asShown(view: CellView, engine: Engine, place: Place): string {
  const isEstimate = typeof view.value === "number" && estimatesAt(engine, place).length > 0;
  const fitted = fittedText(engine, place);
  const said = [isEstimate ? "estimated" : "", fitted].filter(Boolean).join("; ");
  return unanswered(view) ?? (said ? `${view.shown} (${said})` : view.shown);
}

/** A figure as the engine has it, ten decimal places, with the book's decimal mark and without its unit; a day as ISO writes it. */
function inFull(view: CellView, { book }: Engine): string {
  const { kind, value } = view;
  const reason = unanswered(view);
  if (reason !== null) return reason;
  if (typeof value !== "number") return typeof value === "string" ? value : show(value, kind, book);
  if (kind === "days" && view.shown === dayText(value)) return view.shown;
  return withDecimalMark(numberText(value, 15), book.decimal);
}
