/**
 * Which cells of a list an answer rests on. A formula refers to the whole of a chart; a function that takes
 * one figure from it says which, so that nothing else counts as behind the answer.
 */
import type { Place } from "../book/address.ts";
import { addressKey, type CellAddress } from "./inside.ts";
import type { Area } from "./references.ts";

/** A list, by its corners, and one of its cells. */
export interface CellInList<At> {
  readonly start: At;
  readonly end: At;
  readonly at: At;
}

/** What each formula took from its lists when it was last calculated. */
export class ListCells {
  readonly #cells = new Map<string, CellInList<CellAddress>[]>();

  note(by: CellAddress, cell: CellInList<CellAddress>): void {
    const key = addressKey(by);
    const cells = this.#cells.get(key) ?? [];
    this.#cells.set(key, cells);
    cells.push(cell);
  }

  forget(by: CellAddress): void {
    if (this.#cells.size > 0) this.#cells.delete(addressKey(by));
  }

  clear(): void {
    this.#cells.clear();
  }

  of(by: CellAddress): readonly CellInList<CellAddress>[] {
    return this.#cells.size > 0 ? (this.#cells.get(addressKey(by)) ?? []) : [];
  }
}

/** The cells of an area that were taken from it; null when nothing says which, so that all count. */
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
