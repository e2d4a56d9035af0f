/** A book as HyperFormula takes it: its sheets, its names, and the content of each cell. */
import type { HyperFormula } from "hyperformula";
import { type Place, placeKey } from "../book/address.ts";
import { CELL_SIGN, cutFormula } from "../book/alike.ts";
import { isFormula } from "../book/formula.ts";
import { fixed, isList, writtenOut } from "../book/names.ts";
import type { Book } from "../book/shape.ts";
import { readsList } from "./columns-read.ts";
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

/** The contents of all cells by the titles of their pages, without the cells whose keys are in `leave`; or of those without a formula alone. */
export const sheetsOf = (book: Book, leave: ReadonlySet<string>, has: "all" | "values") =>
  Object.fromEntries(
    book.pages.map((page, index) => [
      page.title,
      page.rows.map((cells, row) =>
        cells.map((typed, column) =>
          leave.size > 0 && leave.has(placeKey({ page: index, row, column }))
            ? LEFT_OUT
            : has === "values" && isFormula(typed)
              ? null
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
  if (isFormula(typed)) return formulaOf(book, typed, page);
  const kind = book.pages[page]?.columns[column]?.kind ?? "any";
  return forEngine(understand(typed, kind, book.unit, book.decimal));
}

/** A formula on a page as HyperFormula takes it. */
export function formulaOf(book: Book, typed: string, page: number): string {
  const text = typed.trim();
  // What a list is narrowed to depends on what is typed in its cells, and so on more than the formula.
  const cut = readsList(text) ? null : cutFormula(text);
  if (!cut) return written(book, text, page);
  const patterns = patternsOf(book, page);
  let parts = patterns.get(cut.rest);
  if (parts === undefined) {
    if (patterns.size >= MOST_PATTERNS) patterns.clear();
    parts = partsOf(book, cut.rest, page);
    patterns.set(cut.rest, parts);
  }
  if (!parts) return written(book, text, page);
  let whole = parts[0]!;
  for (const [i, cell] of cut.cells.entries()) whole += cell.text + parts[i + 1]!;
  return whole;
}

const written = (book: Book, typed: string, page: number): string =>
  toEngine(asGiven(book, typed, page), book.unit, book.decimal);

/** The most formulas, cells left out, of which is kept how HyperFormula takes them. */
const MOST_PATTERNS = 5000;

/** By what a formula is without its cells: what HyperFormula is given around them; null for a formula that is read by itself. */
type Patterns = Map<string, readonly string[] | null>;

let latest: { book: Book | null; of: readonly unknown[]; byPage: Patterns[] } = {
  book: null,
  of: [],
  byPage: [],
};

/** The patterns of a page. Names, titles, unit and decimal mark say how a formula is written out: while they stay, the patterns of one book serve the next. */
function patternsOf(book: Book, page: number): Patterns {
  if (latest.book !== book) {
    const { names, unit, decimal, pages } = book;
    const of = [names, unit, decimal, ...pages.flatMap((one) => [one.names, one.title])];
    const same = of.length === latest.of.length && of.every((one, i) => one === latest.of[i]);
    latest = { book, of, byPage: same ? latest.byPage : [] };
  }
  latest.byPage[page] ??= new Map();
  return latest.byPage[page];
}

/** Stands for the cells of a formula while the rest is written out: a cell that no formula here has. */
const STAND_IN = /GA1(\d{4})/g;
const standIn = (i: number): string => `GA${10_000 + i}`;

/** What is around the cells of a formula when it is written out; null when the cells don't come out as they went in. */
function partsOf(book: Book, rest: string, page: number): readonly string[] | null {
  const around = rest.split(CELL_SIGN);
  const whole = written(
    book,
    around.reduce((before, after, i) => before + standIn(i - 1) + after),
    page,
  );
  const found = [...whole.matchAll(STAND_IN)].map((one) => Number(one[1]));
  return found.length === around.length - 1 && found.every((one, i) => one === i)
    ? whole.split(/GA1\d{4}/)
    : null;
}
