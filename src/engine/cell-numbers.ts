/** A number for each cell of a book: those of the rows are counted in their order, those beyond as they are met. */
import type { Book } from "../book/shape.ts";

export interface At {
  readonly page: number;
  readonly row: number;
  readonly column: number;
}

export class CellNumbers {
  /** By page, the number of the first cell of each row; the last one is that after the rows. */
  readonly #starts: readonly Int32Array[];
  readonly #inRows: number;
  readonly #beyond = new Map<string, number>();
  readonly #beyondAt: At[] = [];

  constructor(book: Book) {
    let count = 0;
    this.#starts = book.pages.map(({ rows }) => {
      const starts = new Int32Array(rows.length + 1);
      rows.forEach((row, r) => {
        starts[r] = count;
        count += row.length;
      });
      starts[rows.length] = count;
      return starts;
    });
    this.#inRows = count;
  }

  /** How many cells have numbers. */
  get size(): number {
    return this.#inRows + this.#beyondAt.length;
  }

  /** The number of a cell, or undefined for one beyond the rows that has none yet. */
  known(page: number, row: number, column: number): number | undefined {
    const starts = this.#starts[page];
    if (starts && row + 1 < starts.length && column < starts[row + 1]! - starts[row]!)
      return starts[row]! + column;
    return this.#beyond.get(`${page}.${row}.${column}`);
  }

  /** The number of a cell; a cell beyond the rows gets one when it is first asked for. */
  number(page: number, row: number, column: number): number {
    const known = this.known(page, row, column);
    if (known !== undefined) return known;
    const cell = this.size;
    this.#beyond.set(`${page}.${row}.${column}`, cell);
    this.#beyondAt.push({ page, row, column });
    return cell;
  }

  /** The cell of a number. */
  at(cell: number): At {
    if (cell >= this.#inRows) return this.#beyondAt[cell - this.#inRows]!;
    const page = this.#starts.findIndex((starts) => cell < starts.at(-1)!);
    const starts = this.#starts[page]!;
    let [low, high] = [0, starts.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle]! <= cell) low = middle;
      else high = middle;
    }
    return { page, row: low, column: cell - starts[low]! };
  }
}
