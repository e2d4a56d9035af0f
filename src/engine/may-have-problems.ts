/**
 * The cells that may have a problem, so that the list of problems need not look at every cell. Only the choice
 * of cells is carried from one revision to the next; what each of them says is always read anew.
 */
import { rememberWithObject } from "../../functions/memo.ts";
import { type Place, placeKey, rowAndColumn } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { type Book, type Page, typedAt } from "../book/shape.ts";
import { choicesSet } from "./choices.ts";
import type { Engine } from "./engine.ts";
import { fittingOf } from "./fitted-cells.ts";
import { hasCriteria } from "./unmatched.ts";

/** Formulas and cells with choices or fittings, each once: all that have a problem, and some that have none. */
export function mayHaveProblems(engine: Engine): Iterable<Place> {
  const { book, worked } = engine;
  const found = new Map<string, Place>();
  const add = (place: Place) => found.set(placeKey(place), place);
  for (const place of engine.standingOut()) if (canHaveProblem(book, place)) add(place);
  worked.pages.forEach((page, index) => {
    page.rows.forEach((row, r) => {
      for (const column of withCriteria(row)) {
        const place = { page: index, row: r, column };
        if (canHaveProblem(book, place)) add(place);
      }
    });
  });
  book.pages.forEach((page, index) => {
    for (const place of withSettings(page, index)) if (canHaveProblem(book, place)) add(place);
  });
  return found.values();
}

/** Whether a cell is one that is calculated or checked at all: what is typed plainly is judged where it is used. */
function canHaveProblem(book: Book, place: Place): boolean {
  const typed = typedAt(book, place.page, place.row, place.column);
  if (isFormula(typed)) return true;
  return typed !== "" && (choicesSet(book, place) !== undefined || fittingOf(book, place) !== undefined);
}

const rowsKnown = rememberWithObject<readonly string[], readonly number[]>();
const NO_COLUMNS: readonly number[] = [];

/** The columns of a row whose formulas look for words in lists: these may be found nowhere. */
const withCriteria = (row: readonly string[]): readonly number[] =>
  rowsKnown(row, () => {
    const columns = [...row.keys()].filter((column) => isFormula(row[column]!) && hasCriteria(row[column]!));
    return columns.length > 0 ? columns : NO_COLUMNS;
  });

/** The cells of a page that have settings of their own or stand in a column with choices. */
function withSettings(page: Page, index: number): Place[] {
  const places = Object.keys(page.cells ?? {}).flatMap((address): Place[] => {
    const at = rowAndColumn(address);
    return at ? [{ page: index, ...at }] : [];
  });
  page.columns.forEach(({ choices }, column) => {
    if (choices !== undefined)
      for (let row = 0; row < page.rows.length; row += 1) places.push({ page: index, row, column });
  });
  return places;
}
