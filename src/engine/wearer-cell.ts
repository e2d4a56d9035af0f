/** The cell in which a page names its wearer. */
import { catalogue } from "../../functions/catalogue.ts";
import { type Place, placeKey } from "../book/address.ts";
import { type Call, formulaTree, isFormula, type Tree } from "../book/formula.ts";
import { cornerOf, isCell, nameMeant } from "../book/names.ts";
import type { Book } from "../book/shape.ts";
import { WEARER } from "./piece-notes.ts";
import { areaOf, isSingle } from "./references.ts";

/**
 * The cell named "wearer" as the page's formulas mean it; else the one cell that they give to functions as
 * the argument `wearer`. It may stand on another page, which several pages share. Null where there is no such
 * cell, and where a page has several wearers.
 */
export function wearerCell(book: Book, page: number): Place | null {
  const named = nameMeant(book, WEARER, page);
  if (named && isCell(named.block)) return cornerOf(named.block);
  const given = new Map<string, Place>();
  for (const typed of (book.pages[page]?.rows ?? []).flat()) {
    if (!isFormula(typed)) continue;
    for (const { name, args } of callsIn(formulaTree(typed))) {
      const at = Object.keys(catalogue.get(name)?.takes ?? {}).indexOf(WEARER);
      const area = at >= 0 && args[at] ? areaOf(book, args[at], page) : null;
      if (!area || !isSingle(area)) continue;
      const place = { page: area.page, row: area.top, column: area.left };
      given.set(placeKey(place), place);
    }
  }
  const [only, ...more] = given.values();
  return only && more.length === 0 ? only : null;
}

function callsIn(tree: Tree): Call[] {
  const parts = tree.is === "call" || tree.is === "sign" ? tree.args : tree.is === "list" ? tree.items : [];
  const inner = parts.flatMap((part) => (part ? callsIn(part) : []));
  return tree.is === "call" ? [...inner, tree] : inner;
}
