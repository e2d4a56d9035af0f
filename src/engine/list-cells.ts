/**
 * Which cells of a list an answer rests on. A formula refers to the whole of a chart; a function that takes
 * one figure from it says which, so that nothing else counts as behind the answer.
 */
import type { Place } from "../book/address.ts";
import type { Area } from "./references.ts";

/** A list, by its corners, and one of its cells. */
export interface CellInList<At> {
  readonly start: At;
  readonly end: At;
  readonly at: At;
}

/** The cells of an area that were taken from it. Returns null when this is not known: then all of them count. */
export function takenFrom(area: Area, taken: readonly CellInList<Place>[]): readonly Place[] | null {
  const from = taken.filter(
    ({ start, end }) =>
      start.page === area.page &&
      start.row === area.top &&
      start.column === area.left &&
      end.row === area.bottom &&
      end.column === area.right,
  );
  return from.length > 0 ? from.map(({ at }) => at) : null;
}
