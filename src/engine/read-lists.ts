/** The lists that functions read: formulas that read the same list are given one and the same block. */
import { CellError } from "hyperformula";
import type { Block } from "../../functions/define.ts";

/** The most lists that are kept from one change to the next. */
const MOST_KEPT = 1000;

interface Kept {
  readonly list: Block | CellError;
  /** The change in which it was read last. */
  readonly change: number;
}

/**
 * Within one change a list is read once: HyperFormula calculates a range's cells before any formula that reads it.
 * A list that is read again in a later change and has the same cells and headings stays the same block, so that
 * what functions keep about it (functions/memo.ts) is not found again.
 */
export class ReadLists {
  readonly #kept = new Map<string, Kept>();
  #change = 0;

  /** The beginning of a change: each list is read anew once. */
  begin(): void {
    this.#change += 1;
    if (this.#kept.size > MOST_KEPT) this.#kept.clear();
  }

  /** The list of a key, which says in which cells it stands; the first error in it where it has one. */
  list(key: string, read: () => Block | CellError): Block | CellError {
    const kept = this.#kept.get(key);
    if (kept?.change === this.#change) return kept.list;
    const found = read();
    const list = kept && isSame(kept.list, found) ? kept.list : found;
    this.#kept.set(key, { list, change: this.#change });
    return list;
  }
}

const isSame = (a: Block | CellError, b: Block | CellError): boolean =>
  !(a instanceof CellError) &&
  !(b instanceof CellError) &&
  a.wide === b.wide &&
  isSameList(a, b) &&
  isSameList(a.headings, b.headings);

const isSameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => Object.is(one, b[i]));
