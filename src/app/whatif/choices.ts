/** What can be chosen in What if: typed cells to vary and cells to look at. */
import { fullAddress, type Place } from "../../book/address.ts";
import { isFormula } from "../../book/formula.ts";
import { namedCells, nameOf } from "../../book/names.ts";
import { type Book, typedAt } from "../../book/shape.ts";
import type { Engine } from "../../engine/engine.ts";
import { cellText } from "../../engine/label.ts";
import { type Span, type Watched, watchAt } from "../../engine/sweep.ts";
import { clean, isProblem, type VariedCell, variedCellAt } from "../../engine/varied-cell.ts";

export const keyOf = (book: Book, place: Place): string => fullAddress(book, place);

/** A cell as one speaks of it: its name, else its label with its address. */
export const spoken = (book: Book, { label, place }: VariedCell | Watched): string =>
  nameOf(book, place) === undefined ? cellText(book, place) : label;

const namedPlaces = (book: Book): Place[] =>
  namedCells(book)
    .map(({ place }) => place)
    .toSorted((a, b) => a.page - b.page || a.row - b.row || a.column - b.column);

const isTyped = (book: Book, { page, row, column }: Place): boolean => {
  const typed = typedAt(book, page, row, column);
  return typed !== "" && !isFormula(typed);
};

/** The named cells with a typed figure, in the order of the book, and the chosen cell when it is another such. */
export function variedChoices(book: Book, chosen: Place): VariedCell[] {
  const places = namedPlaces(book).filter((place) => isTyped(book, place));
  const known = new Set(places.map((place) => keyOf(book, place)));
  if (isTyped(book, chosen) && !known.has(keyOf(book, chosen))) places.push(chosen);
  return places.flatMap((place) => {
    const cell = variedCellAt(book, place);
    return isProblem(cell) ? [] : [cell];
  });
}

/** The typed cells that stand at these places; those that are gone are left out. */
export const variedCellsAt = (book: Book, places: readonly Place[]): VariedCell[] =>
  places.flatMap((at) => {
    const cell = isTyped(book, at) && variedCellAt(book, at);
    return !cell || isProblem(cell) ? [] : [cell];
  });

/** The named cells that are worked out to a figure or a verdict, in the order of the book, and the chosen one. */
export function watchChoices(engine: Engine, chosen: Place): Watched[] {
  const { book } = engine;
  const places = namedPlaces(book).filter((place) => !isTyped(book, place));
  const known = new Set(places.map((place) => keyOf(book, place)));
  const typed = typedAt(book, chosen.page, chosen.row, chosen.column);
  if (isFormula(typed) && !known.has(keyOf(book, chosen))) places.push(chosen);
  return places.flatMap((place) => {
    const watched = watchAt(engine, place);
    return isProblem(watched) ? [] : [watched];
  });
}

/** Steps that the tape's mark may be taken in when a range would have too many. */
const MULTIPLES = [1, 2, 4, 5, 8, 10, 16, 20, 40, 50, 80, 100, 200, 500, 1000];

/** A range round the figure as it stands, of at most `most` steps. */
export function usualSpan({ now, step, whole, kind }: VariedCell, most: number): Span {
  const figure = now ?? step;
  const reach = whole ? 3 : Math.max(Math.abs(figure) / 4, (kind === "length" ? 8 : 4) * step);
  const multiple = MULTIPLES.find((one) => (2 * reach) / (one * step) <= most) ?? 1000;
  const by = multiple * step;
  const least = kind === "length" || kind === "count" ? step : Number.NEGATIVE_INFINITY;
  const up = Math.floor(reach / by + 1e-9);
  const down = Math.max(0, Math.min(up, Math.floor((figure - least) / by + 1e-9)));
  return { from: clean(figure - down * by), to: clean(figure + up * by), step: by };
}
