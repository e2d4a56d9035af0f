/**
 * Typed lengths that a sewing function takes for something else: a share or a count that stands in a
 * column of lengths or is typed with a unit. The answer would change with the book's unit.
 */

import type { Kind } from "../../functions/define.ts";
import { phrase } from "../../functions/phrase.ts";
import { columnLetters, type Place, placeKey } from "../book/address.ts";
import { type Book, typedAt } from "../book/shape.ts";
import { namesUnit, understand } from "./content.ts";
import type { Kinds } from "./kinds.ts";
import { cellsIn, sourceOf } from "./references.ts";
import type { Uncounted } from "./uncounted.ts";
import type { Use } from "./uses-in-formula.ts";

/** What an argument that takes no length takes, in words. */
const TAKEN: Partial<Record<Kind, string>> = {
  count: phrase`a count`, share: phrase`a share`, figure: phrase`a plain number`, angle: phrase`an angle`, days: phrase`a number of days`, money: "money",
}; // biome-ignore format: a table

/** The most cells of one range that are looked at one by one. */
const MOST_CELLS = 2000;

/** Whether a use is that of an argument for which a length is the wrong thing. */
export const takesNoLength = ({ argument }: Use): boolean =>
  argument !== undefined && TAKEN[argument.kind] !== undefined;

/**
 * Such cells, each once, those of one range beneath its first. `calls` says whether a formula does call its functions:
 * it has an answer, or an error, which is often that the length was refused as a number.
 */
export function lengthsAsNumbers(
  book: Book,
  kinds: Kinds,
  calls: (formula: Place) => boolean,
  uses: readonly Use[],
): Uncounted[] {
  const found = new Map<string, Uncounted & { readonly users: Place[] }>();
  for (const { formula, by, areas, argument } of uses) {
    const taken = argument && TAKEN[argument.kind];
    if (!taken || !calls(formula)) continue;
    let first = true;
    for (const cell of areas.flatMap((area) => cellsIn(book, area, MOST_CELLS))) {
      const place = sourceOf(book, cell);
      if (!isTypedLength(book, place)) continue;
      const old = found.get(placeKey(place));
      if (old) {
        if (!old.users.some((user) => placeKey(user) === placeKey(formula))) old.users.push(formula);
        continue;
      }
      const typed = typedAt(book, place.page, place.row, place.column).trim();
      const byColumn = !namesUnit(typed) && kinds.of(place) !== "length";
      found.set(placeKey(place), {
        place,
        is: "unusual",
        sentence: phrase`${typed} is a length here, and the argument ${argument.name} of ${by} needs ${taken}: ${mend(place, byColumn, typed)}`,
        first,
        column: null,
        users: [formula],
      });
      first = false;
    }
  }
  return [...found.values()];
}

/** Whether a length is typed in a cell: with a unit, or in a column of lengths. */
export function isTypedLength(book: Book, { page, row, column }: Place): boolean {
  const kind = book.pages[page]?.columns[column]?.kind ?? "any";
  const content = understand(typedAt(book, page, row, column), kind, book.unit, book.decimal);
  return content.is === "length" && content.sure;
}

function mend(place: Place, byColumn: boolean, typed: string): string {
  if (byColumn)
    return phrase`column ${columnLetters(place.column)} holds lengths, so move this one to a column that holds numbers`;
  return namesUnit(typed)
    ? phrase`type a number without a unit`
    : phrase`formulas use it as a length too, so give the other number a cell of its own`;
}
