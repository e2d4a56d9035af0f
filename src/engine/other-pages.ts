/** What the formulas of a page use on other pages. */
import { formulaTree, isFormula } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { type Area, areasOf } from "./references.ts";

/** The cells and blocks of other pages that the formulas of page `index` refer to, each once, in the order of the book. */
export function usedOfOtherPages(book: Book, index: number): Area[] {
  const found = new Map<string, Area>();
  for (const cells of book.pages[index]!.rows)
    for (const typed of cells) {
      if (!isFormula(typed)) continue;
      for (const area of areasOf(book, formulaTree(typed), index))
        if (area.page !== index)
          found.set(`${area.page}.${area.top}.${area.left}.${area.bottom}.${area.right}`, area);
    }
  return [...found.values()].toSorted((a, b) => a.page - b.page || a.top - b.top || a.left - b.left);
}
