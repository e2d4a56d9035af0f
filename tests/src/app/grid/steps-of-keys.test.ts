import { expect, test } from "vitest";
import { blockEnd, TabRun } from "../../../../src/app/grid/steps-of-keys.ts";
import { type Book, blankBook } from "../../../../src/book/shape.ts";

const blank = blankBook("Withy Green", "in", "1/8");
const rows = [["a", "1", "", "x"], ["b"], [""], [""], ["c"], ["d"]];
const book: Book = { ...blank, pages: [{ ...blank.pages[0]!, rows, hidden: ["2:2"] }] };
const size = { tall: 30, wide: 5 };
const at = (row: number, column: number) => ({ page: 0, row, column });

test("Ctrl and an arrow stop at the end of the block, then at the next one, then at the edge", () => {
  const down = (row: number) => blockEnd(book, at(row, 0), 1, 0, size).row;
  // Row 2 is hidden: the block ends above it.
  expect([down(0), down(4), down(5)]).toEqual([4, 5, 29]);
  const right = (column: number) => blockEnd(book, at(0, column), 0, 1, size).column;
  expect([right(0), right(1), right(3)]).toEqual([1, 3, 4]);
  expect(blockEnd(book, at(5, 0), -1, 0, size).row).toBe(4);
  expect(blockEnd(book, at(0, 0), -1, 0, size)).toEqual(at(0, 0));
});

test("a run of Tab begins anew where another cell was chosen in between", () => {
  const run = new TabRun();
  run.tab(3, 1);
  run.tab(3, 2);
  expect([run.startFor(3, 3), run.startFor(3, 2), run.startFor(4, 3)]).toEqual([1, null, null]);
  run.tab(3, 5);
  expect(run.startFor(3, 6)).toBe(5);
});
