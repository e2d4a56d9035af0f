/** The cells that a formula names. */
import { lookUp, type Place } from "../book/address.ts";
import type { Tree } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { formulaTree } from "./kinds.ts";

/** In the order of the formula, each once; ranges cell by cell, at most 2,000 of them, blanks left out. */
export function precedents(book: Book, formula: string, page: number): Place[] {
  const found = new Map<string, Place>();
  const add = (place: Place | null) => {
    if (place) found.set(`${place.page}.${place.row}.${place.column}`, place);
  };
  const visit = (tree: Tree): void => {
    if (tree.is === "name" || tree.is === "cell") add(lookUp(book, tree.text, page));
    else if (tree.is === "range") addRange(tree.from, tree.to);
    else if (tree.is === "call") for (const arg of tree.args) arg && visit(arg);
    else if (tree.is === "sign") tree.args.forEach(visit);
    else if (tree.is === "list") tree.items.forEach(visit);
  };
  const addRange = (from: Tree, to: Tree): void => {
    if (from.is !== "cell" || to.is !== "cell") return;
    const first = lookUp(book, from.text, page);
    const last = first && lookUp(book, to.text, first.page);
    if (!first || !last) return;
    for (let row = first.row; row <= Math.min(last.row, first.row + 2000); row += 1) {
      for (let column = first.column; column <= last.column; column += 1) {
        const typed = book.pages[first.page]?.rows[row]?.[column];
        if (typed !== undefined && typed !== "") add({ page: first.page, row, column });
      }
    }
  };
  visit(formulaTree(formula));
  return [...found.values()];
}
