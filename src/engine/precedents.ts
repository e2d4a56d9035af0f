/** The cells that a formula names. */
import type { Place } from "../book/address.ts";
import type { Tree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { cellsOf } from "./cells-of.ts";
import { formulaTree } from "./kinds.ts";

/** In the order of the formula, each once; ranges cell by cell, blanks left out. */
export function precedents(book: Book, formula: string, page: number): Place[] {
  const found = new Map<string, Place>();
  const visit = (tree: Tree): void => {
    if (tree.is === "call" || tree.is === "sign") for (const arg of tree.args) arg && visit(arg);
    else if (tree.is === "list") tree.items.forEach(visit);
    else
      for (const place of cellsOf(book, tree, page))
        found.set(`${place.page}.${place.row}.${place.column}`, place);
  };
  visit(formulaTree(formula));
  return [...found.values()];
}
