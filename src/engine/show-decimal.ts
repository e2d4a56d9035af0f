/** A book shown with the other decimal mark. No figure and no answer changes by it. */
import { type Decimal, withDecimalMark, withPoints } from "../../functions/decimal.ts";
import { findPlace } from "../book/address.ts";
import { unclearComma } from "../book/commas.ts";
import { isFormula, withSemicolons } from "../book/formula.ts";
import type { Book, ColumnKind } from "../book/shape.ts";
import { type Content, understand } from "./content.ts";

/** The book with its figures typed and shown with this mark. */
export function showDecimal(book: Book, decimal: Decimal): Book {
  if ((book.decimal ?? "point") === decimal) return book;
  const kindAt = (page: number, column: number): ColumnKind =>
    book.pages[page]?.columns[column]?.kind ?? "any";
  const retyped = (typed: string, page: number, column: number): string =>
    isFormula(typed)
      ? partedFormula(typed, decimal)
      : retypedFigure(book, typed, kindAt(page, column), decimal);
  const pages = book.pages.map((page, index) => ({
    ...page,
    rows: page.rows.map((row) => row.map((typed, column) => retyped(typed, index, column))),
  }));
  const trials = book.trials.map((trial) => ({
    ...trial,
    cells: Object.fromEntries(
      Object.entries(trial.cells).map(([address, typed]) => {
        const place = findPlace(book, address);
        return [address, place ? retyped(typed, place.page, place.column) : typed];
      }),
    ),
  }));
  const { decimal: _, ...rest } = { ...book, pages, trials };
  return decimal === "comma" ? { ...rest, decimal } : rest;
}

/** A typed figure with the other mark; words, whole figures and most dates as they are. */
function retypedFigure(book: Book, typed: string, kind: ColumnKind, decimal: Decimal): string {
  if (!/\d[.,]|[.,]\d/.test(typed)) return typed;
  const was = understand(typed, kind, book.unit, book.decimal);
  // A day whose order the mark had settled is written so that it needs no mark.
  if (was.is === "date")
    return sameFigure(was, understand(typed, kind, book.unit, decimal)) ? typed : was.value;
  if (!("value" in was) || typeof was.value !== "number") return typed;
  const plain = withPoints(typed, book.decimal ?? "point");
  const written =
    plain === null ? typed : withDecimalMark(plain.replace(/(^|[^\d.,])\.(?=\d)/g, "$10."), decimal);
  return sameFigure(was, understand(written, kind, book.unit, decimal)) ? written : typed;
}

const sameFigure = (a: Content, b: Content): boolean =>
  a.is === b.is && "value" in a && "value" in b && a.value === b.value;

/** A formula whose arguments are parted by commas between figures, parted by ; where a comma would be in doubt. */
function partedFormula(formula: string, decimal: Decimal): string {
  return unclearComma(formula, decimal) && !unclearComma(formula) ? withSemicolons(formula) : formula;
}
