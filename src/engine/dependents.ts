/** The cells whose formulas name a cell. */
import { lookUp, type Place } from "../book/address.ts";
import { isFormula, type Tree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { formulaTree } from "./kinds.ts";

/** In the order of the book, those that name it by name, by address or within a range. */
export function dependents(book: Book, place: Place): Place[] {
  const found: Place[] = [];
  book.pages.forEach((page, index) => {
    page.rows.forEach((row, r) => {
      row.forEach((typed, column) => {
        if (isFormula(typed) && names(book, formulaTree(typed), index, place))
          found.push({ page: index, row: r, column });
      });
    });
  });
  return found;
}

function names(book: Book, tree: Tree, home: number, place: Place): boolean {
  const inner = (one: Tree | null | undefined): boolean => !!one && names(book, one, home, place);
  switch (tree.is) {
    case "name":
    case "cell": {
      const at = lookUp(book, tree.text, home);
      return at !== null && at.page === place.page && at.row === place.row && at.column === place.column;
    }
    case "range": {
      if (tree.from.is !== "cell" || tree.to.is !== "cell") return false;
      const first = lookUp(book, tree.from.text, home);
      const last = first && lookUp(book, tree.to.text, first.page);
      if (!first || !last || first.page !== place.page) return false;
      const rows = place.row >= first.row && place.row <= last.row;
      return rows && place.column >= first.column && place.column <= last.column;
    }
    case "call":
    case "sign":
      return tree.args.some(inner);
    case "list":
      return tree.items.some(inner);
    default:
      return false;
  }
}
