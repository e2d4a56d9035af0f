/**
 * What a cell is chosen from. The cell's own setting comes first, then its column's, then the words
 * that a sewing function takes when it is given the cell for such an argument.
 */

import { catalogue } from "../../functions/catalogue.ts";
import { remember } from "../../functions/memo.ts";
import { suggestion } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import { cellAddress, type Place } from "../book/address.ts";
import { formulaTree, isFormula, type Tree } from "../book/formula.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { dependents } from "./dependents.ts";
import { areaOf, cellsIn, isSingle } from "./references.ts";

export interface Choices {
  readonly list: readonly string[];
  /** Who says so: the cell's setting, its column's, or the function of this name. */
  readonly by: "cell" | "column" | { readonly function: string };
}

/** More choices than these are not listed; a longer block is not a list to choose from. */
const MOST = 500;

/** The choices set for a cell or its column, as they are written; undefined when no choices are set. */
export function choicesSet(book: Book, { page, row, column }: Place): string | undefined {
  const on = book.pages[page];
  return on?.cells?.[cellAddress(row, column)]?.choices ?? on?.columns[column]?.choices;
}

/** The choices of "box; knife", or of "=A2:A6" on a page; each once, blanks left out. `shown` is what a cell shows. */
export function readChoices(
  book: Book,
  page: number,
  written: string,
  shown: (place: Place) => string,
): readonly string[] {
  const all = isFormula(written)
    ? inCells(book, page, written).map(shown)
    : written.split(written.includes(";") ? ";" : ",");
  return [...new Set(all.map((text) => text.trim()).filter((text) => text !== ""))].slice(0, MOST);
}

function inCells(book: Book, page: number, formula: string): readonly Place[] {
  const area = areaOf(book, formulaTree(formula), page);
  return area ? cellsIn(book, area, MOST) : [];
}

/** Why choices can't be set as they are written, or null. */
export function choicesFault(book: Book, page: number, written: string): string | null {
  if (!isFormula(written)) {
    const list = readChoices(book, page, written, () => "");
    return list.length > 0 ? null : phrase`a list of choices needs at least one choice, such as: box; knife`;
  }
  return areaOf(book, formulaTree(written), page)
    ? null
    : phrase`${written} names no cells; write the cells that hold the choices, such as =A2:A6, or a list such as: box; knife`;
}

/** What a cell is chosen from, or null when anything may stand in it. */
export function choicesAt(book: Book, place: Place, shown: (place: Place) => string): Choices | null {
  const own = book.pages[place.page]?.cells?.[cellAddress(place.row, place.column)]?.choices;
  const written = choicesSet(book, place);
  if (written !== undefined)
    return {
      list: readChoices(book, place.page, written, shown),
      by: own === undefined ? "column" : "cell",
    };
  return askedChoices(book, place);
}

/** The words that a function asks for where a formula gives it the cell by itself. */
function askedChoices(book: Book, place: Place): Choices | null {
  const isCell = (tree: Tree, page: number) => {
    if (tree.is !== "cell" && tree.is !== "name") return false;
    const area = areaOf(book, tree, page);
    return (
      area !== null &&
      isSingle(area) &&
      area.page === place.page &&
      area.top === place.row &&
      area.left === place.column
    );
  };
  const find = (tree: Tree, page: number): Choices | null => {
    if (tree.is !== "call" && tree.is !== "sign") return null;
    const takes = tree.is === "call" ? Object.values(catalogue.get(tree.name)?.takes ?? {}) : [];
    for (const [i, arg] of tree.args.entries()) {
      if (!arg) continue;
      const list = takes[i]?.choices;
      if (list && tree.is === "call" && isCell(arg, page)) return { list, by: { function: tree.name } };
      const inner = find(arg, page);
      if (inner) return inner;
    }
    return null;
  };
  for (const user of dependents(book, place)) {
    const found = find(formulaTree(typedAt(book, user.page, user.row, user.column)), user.page);
    if (found) return found;
  }
  return null;
}

/** Kept because each cell of a column is compared with the same choices, at every edit. */
const plainTexts = remember<string, string>(2000);

/** A choice as it is compared: words between commas, such as layers, may stand in any order. */
const plain = (text: string): string =>
  plainTexts(text, () =>
    text
      .toLowerCase()
      .split(",")
      .map((part) => part.trim())
      .toSorted()
      .join(", "),
  );

/** Why what a cell holds is not among the choices set for it, in a sentence; null when it is, or is blank. */
export function choiceFault(
  book: Book,
  place: Place,
  texts: readonly string[],
  shown: (place: Place) => string,
): string | null {
  const written = choicesSet(book, place);
  const text = texts[0]?.trim() ?? "";
  if (written === undefined || text === "") return null;
  const wanted = texts.map(plain);
  const isMeant = (choice: string) => choice.trim() !== "" && wanted.includes(plain(choice));
  // Most cells hold one of the choices: cells of choices are read only as far as that one.
  if (isFormula(written) && inCells(book, place.page, written).some((cell) => isMeant(shown(cell))))
    return null;
  const list = readChoices(book, place.page, written, shown);
  if (list.some(isMeant)) return null;
  const called = list.some((choice) => choice.includes(",")) ? list.map((choice) => `"${choice}"`) : list;
  const said =
    list.length > 8
      ? phrase`${called.slice(0, 7).join(", ")} and ${list.length - 7} more`
      : called.join(", ");
  return list.length === 0
    ? phrase`the choices of this cell are blank: ${written} holds no words`
    : phrase`"${text.slice(0, 40)}" is not among the choices ${said}${/\p{L}/u.test(text) ? suggestion(text, list) : ""}`;
}
