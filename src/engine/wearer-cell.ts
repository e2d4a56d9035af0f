/** The cells in which a page names its wearer and what was worn beneath. */
import { catalogue } from "../../functions/catalogue.ts";
import { type Place, placeKey } from "../book/address.ts";
import { callsIn, formulaTree, isFormula } from "../book/formula.ts";
import { cornerOf, isCell, nameMeant } from "../book/names.ts";
import type { Book } from "../book/shape.ts";
import { areaOf, isSingle } from "./references.ts";

/** The name of the cell that says whom a book or a page is drawn for. */
export const WEARER = "wearer";

/**
 * The cell named "wearer" as the page's formulas mean it; else the one cell that they give to functions as
 * the argument `wearer`. It may stand on another page, which several pages share. Null where there is no such
 * cell, and where a page has several wearers.
 */
export function wearerCell(book: Book, page: number): Place | null {
  const named = nameMeant(book, WEARER, page);
  if (named && isCell(named.block)) return cornerOf(named.block);
  return onlyCellGiven(book, page, WEARER);
}

/** The one cell that the page's formulas give to functions as the layers worn beneath; null where there is no such cell, or several. */
export const layersCell = (book: Book, page: number): Place | null => onlyCellGiven(book, page, "beneath");

function onlyCellGiven(book: Book, page: number, argument: string): Place | null {
  const given = new Map<string, Place>();
  for (const typed of (book.pages[page]?.rows ?? []).flat()) {
    if (!isFormula(typed)) continue;
    for (const { name, args } of callsIn(formulaTree(typed))) {
      const at = Object.keys(catalogue.get(name)?.takes ?? {}).indexOf(argument);
      const area = at >= 0 && args[at] ? areaOf(book, args[at], page) : null;
      if (!area || !isSingle(area)) continue;
      const place = { page: area.page, row: area.top, column: area.left };
      given.set(placeKey(place), place);
    }
  }
  const [only, ...more] = given.values();
  return only && more.length === 0 ? only : null;
}
