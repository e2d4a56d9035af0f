/**
 * Values that are being worked out elsewhere, such as the lay of a large cut list. Until they come,
 * every cell that rests on one waits for it too: no IFERROR, ISERROR or COUNT passes over its error.
 */
import { CellError, SimpleRangeValue } from "hyperformula";
import { type Ast, addressKey, type CellAddress } from "./inside.ts";
import { isOfParts } from "./list-parts.ts";

/** Thrown where a formula comes to such a value; its cell has the same error then. */
export class Waiting {
  constructor(readonly error: CellError) {}
}

/** The types of nodes that are ranges, in HyperFormula's formulas. */
const RANGES: ReadonlySet<string> = new Set(["CELL_RANGE", "COLUMN_RANGE", "ROW_RANGE"]);

export class Awaited {
  /** Errors are known by their sentences: HyperFormula copies them on their way from cell to cell. */
  readonly #sentences = new Set<string>();
  /** The cells that wait, and how many of them are on each sheet. */
  readonly #cells = new Map<string, CellAddress>();
  readonly #onSheet = new Map<number, number>();

  /** Remembers the sentence of an error that stands for a value still to come. */
  add(sentence: string): void {
    this.#sentences.add(sentence);
  }

  /** Remembers that a cell waits. */
  wait(cell: CellAddress): void {
    const key = addressKey(cell);
    if (this.#cells.has(key)) return;
    this.#cells.set(key, cell);
    this.#count(cell, 1);
  }

  #count({ sheet }: CellAddress, more: number): void {
    this.#onSheet.set(sheet, (this.#onSheet.get(sheet) ?? 0) + more);
  }

  /** A cell is calculated or typed again: whether it waits is not known yet. */
  forget(cell: CellAddress): void {
    if (this.#cells.size > 0 && this.#cells.delete(addressKey(cell))) this.#count(cell, -1);
  }

  forgetAll(): void {
    this.#cells.clear();
    this.#onSheet.clear();
  }

  /** Throws at a value that is still to come, and at a range with such a value in it. */
  stopAt(value: unknown): void {
    if (this.#sentences.size === 0) return;
    if (value instanceof CellError) {
      if (value.message !== undefined && this.#sentences.has(value.message)) throw new Waiting(value);
    } else if (value instanceof SimpleRangeValue && this.#mayWait(value)) {
      for (const row of value.data) for (const one of row) if (one instanceof CellError) this.stopAt(one);
    }
  }

  /** Whether a range has a cell that waits. Of values that stand in no cells this is not known. */
  #mayWait(value: SimpleRangeValue): boolean {
    const { range } = value;
    // The parts of a list were looked at one by one.
    if (!range) return !isOfParts(value);
    for (const cell of this.#cells.values()) if (range.addressInRange(cell)) return true;
    return false;
  }

  /**
   * The same for the ranges among the arguments of a call: some functions read ranges by themselves, past the errors in
   * them. Ranges of sheets on which no cell waits are not read; a range without a sheet is one of `own`, the formula's.
   */
  stopAtRanges(args: readonly Ast[], own: number, read: (arg: Ast) => unknown): void {
    if (this.#cells.size === 0) return;
    for (const arg of args)
      if (RANGES.has(arg.type) && (this.#onSheet.get(arg.start?.sheet ?? own) ?? 0) > 0)
        this.stopAt(read(arg));
  }
}
