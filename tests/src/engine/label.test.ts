import { expect, test } from "vitest";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { cellKey, cellText, cellTextWithName, labelOf } from "../../../src/engine/label.ts";

const heading = (text: string) => ({ heading: text, kind: "any", width: 100 }) as const;
const BOOK: Book = {
  ...blankBook("Withy Green", "in", "1/8"),
  pages: [
    {
      title: "Measure",
      stage: "Measure",
      columns: ["Measurement", "Drawn now", "Widow", "Over"].map(heading),
      rows: [
        ["hip  girth\nover the pad", "=C1", "42", "stays"],
        ["", "=C2", "16 1/2 in", ""],
        ["M 0 0 L 1 1 Z", "3"],
        ["a label that goes on and on, far past what anyone would read in a sentence", "1"],
        ["=1+1", "2"],
        [],
      ],
      notes: {},
    },
  ],
  names: { hip_over_pad: "Measure!B1", ease: "Measure!B2" },
};
const at = (row: number, column: number) => ({ page: 0, row, column });

test("a cell is called by the words that begin its row, with the heading where other cells stand between", () => {
  expect(labelOf(BOOK, at(0, 1))).toBe("hip girth over the pad");
  expect(labelOf(BOOK, at(0, 2))).toBe("hip girth over the pad, Widow");
  expect(cellText(BOOK, at(0, 1))).toBe("hip girth over the pad (Measure!B1)");
  expect(cellTextWithName(BOOK, at(0, 1))).toBe("hip girth over the pad (hip_over_pad, Measure!B1)");
  expect(cellKey(BOOK, at(0, 1))).toBe("hip_over_pad");
  expect(labelOf(BOOK, at(3, 1))).toBe("a label that goes on and on, far past what anyone would rea…");
});

test("a name that several pages have is given with its page, one that only one page has is not", () => {
  const own = (title: string, names: Book["names"]) => ({ ...BOOK.pages[0]!, title, names });
  const two: Book = {
    ...BOOK,
    pages: [own("Daughter", { hem: "Daughter!B1" }), own("Lady", { hem: "Lady!B1", flounce: "Lady!B2" })],
    names: {},
  };
  expect(cellKey(two, { page: 0, row: 0, column: 1 })).toBe("Daughter!hem");
  expect(cellKey(two, { page: 1, row: 0, column: 1 })).toBe("Lady!hem");
  expect(cellKey(two, { page: 1, row: 1, column: 1 })).toBe("flounce");
  expect(cellTextWithName(two, { page: 1, row: 0, column: 1 })).toBe(
    "hip girth over the pad (Lady!hem, Lady!B1)",
  );
});

test("without words in its row it is called by its name, else its heading, else its address alone", () => {
  expect(cellText(BOOK, at(1, 1))).toBe("ease (Measure!B2)");
  expect(cellTextWithName(BOOK, at(1, 1))).toBe("ease (Measure!B2)");
  // A figure, an outline and a formula are no words.
  for (const row of [1, 2, 4]) expect(labelOf(BOOK, at(row, 1))).toBe("Drawn now");
  expect(cellText(BOOK, at(1, 3))).toBe("Over (Measure!D2)");
  expect(cellText(BOOK, at(5, 7))).toBe("Measure!H6");
  const figures = { ...BOOK, pages: [{ ...BOOK.pages[0]!, columns: ["What", "Figure"].map(heading) }] };
  expect(cellText(figures, at(4, 1))).toBe("Measure!B5");
  expect(cellKey(BOOK, at(5, 7))).toBe("Measure!H6");
});
