/**
 * The cells of lists that problems are about. A function that reads a list says which of its cells a
 * refusal or a verdict concerns; the page leads there, and marks the cell.
 */
import { phrase } from "../../functions/phrase.ts";
import { fullAddress, type Place, placeKey } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { CellView } from "./view.ts";

/** A cell of a list, and what is said about it. */
export interface PointedAt<At> {
  readonly at: At;
  readonly sentence: string;
}

/** What a formula says about a cell of a list. */
export interface Said {
  /** The cell of the formula. */
  readonly by: Place;
  readonly sentence: string;
}

/** What is said about a cell, each with the cell that says it: "waist girth may be swapped with hip girth (says Measure!A5)". */
export const saidTexts = (book: Book, said: readonly Said[]): string[] =>
  said.map(({ by, sentence }) => phrase`${sentence} (says ${fullAddress(book, by)})`);

/** Whether a cell has a problem of its own that may be about cells of a list. */
export const hasOwnProblem = (place: Place, { problem }: Pick<CellView, "problem">): boolean =>
  problem !== null &&
  (problem.is === "error" || problem.is === "verdict" || problem.is === "unusual") &&
  placeKey(problem.from) === placeKey(place);

/** By the key of each cell that is pointed at, what is said about it, each sentence once. */
export function saidOf(
  formulas: readonly { readonly by: Place; readonly at: readonly PointedAt<Place>[] }[],
): ReadonlyMap<string, readonly Said[]> {
  const found = new Map<string, Said[]>();
  for (const { by, at } of formulas)
    for (const { at: place, sentence } of at) {
      const key = placeKey(place);
      const said = found.get(key) ?? [];
      found.set(key, said);
      if (!said.some((one) => one.sentence === sentence)) said.push({ by, sentence });
    }
  return found;
}
