import { expect, it } from "vitest";
import { pointer } from "../../../../src/app/grid/pointing.ts";
import { blankBook } from "../../../../src/book/shape.ts";

const book = { ...blankBook("Withy Green", "in", "1/8"), names: { hip: "Measure!B2" } };
const cell = (row: number, column: number) => ({ row, column });

it("a named cell is pointed at by its name, another by its address", () => {
  expect(pointer(book, 0, 0, cell(1, 1), cell(1, 1))).toBe("hip");
  expect(pointer(book, 1, 1, cell(1, 1), cell(1, 1))).toBe("B2");
});

it("a block is pointed at from its upper left to its lower right corner, whichever way it was drawn", () => {
  expect(pointer(book, 0, 0, cell(4, 2), cell(1, 1))).toBe("B2:C5");
});

it("a cell or a block of another page is pointed at by its name, else with the page's title", () => {
  expect(pointer(book, 1, 0, cell(1, 1), cell(1, 1))).toBe("hip");
  expect(pointer(book, 1, 0, cell(2, 1), cell(2, 1))).toBe("Measure!B3");
  expect(pointer(book, 1, 0, cell(4, 2), cell(1, 1))).toBe("Measure!B2:C5");
});
