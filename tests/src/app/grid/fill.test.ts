import { describe, expect, it } from "vitest";
import { drawnOut, fillWithin } from "../../../../src/app/grid/fill.ts";
import { type Book, blankBook } from "../../../../src/book/shape.ts";

const blank = blankBook("Withy Green", "in", "1/8");
const book: Book = {
  ...blank,
  pages: blank.pages.map((page, i) =>
    i === 0 ? { ...page, rows: [[], [], ["x"], ["y"], ["=A1+$A$1"]] } : page,
  ),
};
const block = (top: number, left: number, bottom: number, right: number) => ({
  page: 0,
  top,
  left,
  bottom,
  right,
});
const texts = (typings: ReturnType<typeof drawnOut>) =>
  typings.map(({ row, column, typed }) => `${row},${column}: ${typed}`);

describe("drawing cells out over others", () => {
  it("downwards the first comes again after the last", () => {
    expect(texts(drawnOut(book, block(2, 0, 3, 0), block(4, 0, 6, 0)))).toEqual([
      "4,0: x",
      "5,0: y",
      "6,0: x",
    ]);
  });
  it("upwards the last comes next, as the rows run on", () => {
    expect(texts(drawnOut(book, block(2, 0, 3, 0), block(1, 0, 1, 0)))).toEqual(["1,0: y"]);
    const wide = {
      ...book,
      pages: book.pages.map((page) => ({ ...page, rows: [...Array(5).fill([]), ["x"], ["y"]] })),
    };
    expect(texts(drawnOut(wide, block(5, 0, 6, 0), block(2, 0, 4, 0)))).toEqual([
      "2,0: y",
      "3,0: x",
      "4,0: y",
    ]);
  });
  it("formulas move along, fixed addresses stay", () => {
    expect(texts(drawnOut(book, block(4, 0, 4, 0), block(4, 1, 4, 1)))).toEqual(["4,1: =B1+$A$1"]);
  });
});

describe("filling within the chosen cells", () => {
  it("several rows take the first, a single row takes the one above", () => {
    expect(fillWithin(block(2, 1, 5, 2), "down")).toEqual([block(2, 1, 2, 2), block(3, 1, 5, 2)]);
    expect(fillWithin(block(2, 1, 2, 2), "down")?.[0]).toEqual(block(1, 1, 1, 2));
  });
  it("to the right likewise", () => {
    expect(fillWithin(block(2, 1, 5, 2), "right")).toEqual([block(2, 1, 5, 1), block(2, 2, 5, 2)]);
  });
  it("there is nothing above the first row or before the first column", () => {
    expect(fillWithin(block(0, 1, 0, 1), "down")).toBeNull();
    expect(fillWithin(block(3, 0, 3, 0), "right")).toBeNull();
  });
});
