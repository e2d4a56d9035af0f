/** A book as HyperFormula takes it: its sheets, its names, and the content of each cell. */
import type { HyperFormula } from "hyperformula";
import { type Place, placeKey } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { fixed, isList, writtenOut } from "../book/names.ts";
import type { Book } from "../book/shape.ts";
import { forEngine, toEngine, understand } from "./content.ts";
import { withListsNarrowed } from "./narrowed-lists.ts";

/** The content of a cell that is left out: a value that is an error. */
const LEFT_OUT = "=#N/A";

/** The places that hold formulas, in the order of the book. */
export function formulaPlaces({ pages }: Book): Place[] {
  const places: Place[] = [];
  pages.forEach(({ rows }, page) => {
    rows.forEach((cells, row) => {
      cells.forEach((typed, column) => {
        if (isFormula(typed)) places.push({ page, row, column });
      });
    });
  });
  return places;
}

/** The contents of all cells by the titles of their pages, without the cells whose keys are in `leave`. */
export const sheetsOf = (book: Book, leave: ReadonlySet<string>) =>
  Object.fromEntries(
    book.pages.map((page, index) => [
      page.title,
      page.rows.map((cells, row) =>
        cells.map((typed, column) =>
          leave.size > 0 && leave.has(placeKey({ page: index, row, column }))
            ? LEFT_OUT
            : contentOf(book, typed, { page: index, row, column }),
        ),
      ),
    ]),
  );

/** The names that HyperFormula knows: those of the book's own single cells. All others are written out in formulas. */
export const cellNames = ({ names }: Book): (readonly [name: string, address: string])[] =>
  Object.entries(names).filter(([, address]) => !isList(address));

/** Gives HyperFormula the names that are new in a book or stand for another cell, and takes those away that are gone. */
export function followNames(hf: HyperFormula, { names: old }: Book, next: Book): void {
  if (old === next.names) return;
  for (const [name, address] of Object.entries(old))
    if (!isList(address) && !Object.hasOwn(next.names, name)) hf.removeNamedExpression(name);
  for (const [name, address] of cellNames(next)) {
    if (!Object.hasOwn(old, name)) hf.addNamedExpression(name, `=${fixed(address)}`);
    else if (old[name] !== address) hf.changeNamedExpression(name, `=${fixed(address)}`);
  }
}

/** A formula with the lists and names that HyperFormula does not know written as addresses. */
const asGiven = (book: Book, typed: string, page: number): string =>
  writtenOut(book, withListsNarrowed(book, typed, page), page);

/** What is typed in a cell as HyperFormula takes it. */
export function contentOf(book: Book, typed: string, { page, column }: Place): ReturnType<typeof forEngine> {
  const { pages, unit, decimal } = book;
  const kind = pages[page]?.columns[column]?.kind ?? "any";
  return forEngine(understand(asGiven(book, typed, page), kind, unit, decimal));
}

/** A formula on a page as HyperFormula takes it. */
export const formulaOf = (book: Book, typed: string, page: number): string =>
  toEngine(asGiven(book, typed, page), book.unit, book.decimal);
