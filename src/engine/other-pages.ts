/** What the formulas of a page use on other pages. */
import type { Place } from "../book/address.ts";
import { formulaTree, isFormula } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { type Area, areasOf } from "./references.ts";

/**
 * The cells and blocks of other pages that the formulas of page `index` refer to, each once, in the order of the
 * book. The formula of the cell `without` is passed over.
 */
export function usedOfOtherPages(
  book: Book,
  index: number,
  without: Pick<Place, "row" | "column"> | null = null,
): Area[] {
  const found = new Map<string, Area>();
  for (const [row, cells] of book.pages[index]!.rows.entries())
    for (const [column, typed] of cells.entries()) {
      if (!isFormula(typed) || (row === without?.row && column === without.column)) continue;
      for (const area of areasOf(book, formulaTree(typed), index))
        if (area.page !== index)
          found.set(`${area.page}.${area.top}.${area.left}.${area.bottom}.${area.right}`, area);
    }
  return [...found.values()].toSorted((a, b) => a.page - b.page || a.top - b.top || a.left - b.left);
}
