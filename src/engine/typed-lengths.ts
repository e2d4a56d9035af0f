/** The lengths that are typed in named cells of a page: a copy of the page keeps them, whosever they are. */
import type { Place } from "../book/address.ts";
import { isFormula } from "../book/formula.ts";
import { namedCells } from "../book/names.ts";
import { typedAt } from "../book/shape.ts";
import type { Engine } from "./engine.ts";

/** In the order of the page's rows. */
export function typedLengths(engine: Engine, page: number): Place[] {
  const seen = new Set<string>();
  return namedCells(engine.book)
    .map(({ place }) => place)
    .filter((place) => {
      const key = `${place.row} ${place.column}`;
      if (place.page !== page || seen.has(key)) return false;
      seen.add(key);
      if (isFormula(typedAt(engine.book, page, place.row, place.column))) return false;
      const { kind, value } = engine.view(place);
      return kind === "length" && typeof value === "number";
    })
    .toSorted((a, b) => a.row - b.row || a.column - b.column);
}
