/** Which formulas refer to a cell. What each formula refers to is kept while its row, the names and the pages stay as they are. */
import { rememberWithObject } from "../../functions/memo.ts";
import type { Place } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { workedBook } from "./fitted-cells.ts";
import { type Area, areasOf, isIn } from "./references.ts";
import { namesTogether } from "./uses.ts";

/** A formula and the areas that it refers to. */
export interface Referring {
  readonly place: Place;
  readonly typed: string;
  readonly areas: readonly Area[];
}

interface Known {
  readonly names: readonly unknown[];
  readonly titles: string;
  readonly page: number;
  readonly row: number;
  readonly formulas: readonly Referring[];
}

const rows = rememberWithObject<readonly string[], { known: Known | null }>();

/** Every formula of the book with the areas that it refers to, in the order of the book. */
export function* referring(book: Book): Generator<Referring> {
  const names = namesTogether(book);
  const titles = book.pages.map(({ title }) => title).join("\n");
  for (const [page, { rows: typedRows }] of book.pages.entries()) {
    for (const [row, typedRow] of typedRows.entries()) {
      const kept = rows(typedRow, () => ({ known: null }));
      let of = kept.known;
      if (of?.names !== names || of.titles !== titles || of.page !== page || of.row !== row) {
        const formulas = typedRow.flatMap((typed, column) =>
          isFormula(typed)
            ? [{ place: { page, row, column }, typed, areas: areasOf(book, formulaTree(typed), page) }]
            : [],
        );
        of = { names, titles, page, row, formulas };
        kept.known = of;
      }
      yield* of.formulas;
    }
  }
}

/** The cells whose formulas refer to a cell, in the order of the book. */
export function dependents(book: Book, place: Place): Place[] {
  const found: Place[] = [];
  for (const formula of referring(workedBook(book)))
    if (formula.areas.some((area) => isIn(area, place))) found.push(formula.place);
  return found;
}
