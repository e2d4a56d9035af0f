/**
 * The cells of one HyperFormula whose values may be a problem: errors, and verdicts that are not ok. The list
 * of problems looks at these and not at every cell. Each cell that was calculated or entered since it was last
 * asked for is looked at again; what is known of a cell is only whether it stands out, never what it says.
 */
import { DetailedCellError } from "hyperformula";
import { addressKey, type CellAddress } from "./inside.ts";
import type { RawValue } from "./raw-value.ts";
import { isVerdict } from "./view.ts";

export class StandingOut {
  readonly #cells = new Map<string, CellAddress>();
  /** The cells to look at before the next answer; null for all cells of the book. */
  #fresh: Map<string, CellAddress> | null = null;

  /** Everything was built anew. */
  clear(): void {
    this.#cells.clear();
    this.#fresh = null;
  }

  /** The cell was calculated, or holds something else now. */
  note(cell: CellAddress): void {
    this.#fresh?.set(addressKey(cell), cell);
  }

  /** The cells that stand out; `all` lists every cell with a formula, `raw` reads a value. */
  cells(all: () => Iterable<CellAddress>, raw: (cell: CellAddress) => RawValue): readonly CellAddress[] {
    for (const cell of this.#fresh?.values() ?? all()) {
      const value = raw(cell);
      const key = addressKey(cell);
      if (value instanceof DetailedCellError || (typeof value === "string" && isVerdict(value)))
        this.#cells.set(key, cell);
      else this.#cells.delete(key);
    }
    this.#fresh = new Map();
    return [...this.#cells.values()];
  }
}
