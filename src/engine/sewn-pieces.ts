/** The lists of pieces that the seams of a book are measured on. Their outlines have no allowances, so nothing is cut from them. */
import { catalogue, ofCatalogue } from "../../functions/catalogue.ts";
import { PIECE_LIST } from "../../functions/seams/piece-list.ts";
import { callsIn, formulaTree, isFormula } from "../book/formula.ts";
import type { Book } from "../book/shape.ts";
import { type Area, areaOf } from "./references.ts";

/** For each function that reads such a list, the position of that argument; for each that reads a cut list, 0. */
const readers = ofCatalogue(() => {
  const sewn = new Map<string, number>();
  const cut = new Set<string>();
  for (const { name, takes, block, twoBlocks } of catalogue.values()) {
    const at = Object.values(takes).findIndex(({ list }) => list === PIECE_LIST);
    if (at >= 0) sewn.set(name, at);
    if ([block, twoBlocks].some((form) => form && "cut_list" in form.takes)) cut.add(name);
  }
  const names = [...sewn.keys(), ...cut];
  const calls = names.length > 0 ? new RegExp(String.raw`\b(?:${names.join("|")})\s*\(`, "i") : null;
  return { sewn, cut, calls };
});

const areaKey = ({ page, top, left, bottom, right }: Area): string => [page, top, left, bottom, right].join();

/** The areas of these lists; one that a function of the book also reads as a cut list is left out. */
export function sewnPieces(book: Book): Area[] {
  const { sewn, cut, calls } = readers();
  const [lists, cutLists] = [new Map<string, Area>(), new Set<string>()];
  for (const [page, { rows }] of book.pages.entries())
    for (const row of rows)
      for (const typed of row) {
        if (!calls || !isFormula(typed) || !calls.test(typed)) continue;
        for (const { name, args } of callsIn(formulaTree(typed))) {
          const at = sewn.get(name);
          const list = at === undefined ? args[0] : args[at];
          if ((at === undefined && !cut.has(name)) || !list) continue;
          const area = areaOf(book, list, page);
          if (!area) continue;
          if (at === undefined) cutLists.add(areaKey(area));
          else lists.set(areaKey(area), area);
        }
      }
  return [...lists].flatMap(([key, area]) => (cutLists.has(key) ? [] : [area]));
}
