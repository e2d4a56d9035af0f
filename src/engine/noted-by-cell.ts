/** What the formula of each cell noted while it was last calculated, in the order of noting. */
import { addressKey, type CellAddress } from "./inside.ts";

export class NotedByCell<T> {
  readonly #cells = new Map<string, { readonly by: CellAddress; readonly noted: T[] }>();

  note(by: CellAddress, one: T): void {
    const key = addressKey(by);
    const cell = this.#cells.get(key) ?? { by, noted: [] };
    this.#cells.set(key, cell);
    cell.noted.push(one);
  }

  /** The cell holds something else now, or its formula is about to be calculated again. */
  forget(by: CellAddress): void {
    if (this.#cells.size > 0) this.#cells.delete(addressKey(by));
  }

  clear(): void {
    this.#cells.clear();
  }

  of(by: CellAddress): readonly T[] {
    return this.#cells.size > 0 ? (this.#cells.get(addressKey(by))?.noted ?? []) : [];
  }

  /** The cells whose formulas noted something. */
  get all(): readonly CellAddress[] {
    return [...this.#cells.values()].map(({ by }) => by);
  }
}
