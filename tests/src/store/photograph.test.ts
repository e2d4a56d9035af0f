import { expect, test } from "vitest";
import { MOST_PHOTOGRAPHS, photographsIn } from "../../../src/book/photographs.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { copyPage, insertRows, moveCells, typeCells } from "../../../src/store/commands.ts";
import { putPhotograph, withPhotographs } from "../../../src/store/photograph.ts";

const BOOK = blankBook("Stock", "in", "1/8");
const image = (length: number) => `data:image/jpeg;base64,${"A".repeat(length)}`;
const at = (row: number, column = 0) => ({ page: 3, row, column });
const block = (top: number, bottom = top) => ({ page: 3, top, bottom, left: 0, right: 0 });
const done = (edited: ReturnType<ReturnType<typeof putPhotograph>["edit"]>): Book => {
  if ("refusal" in edited) throw new Error(edited.refusal);
  return edited;
};
const LINEN = { image: image(40), words: "blue linen" };
const put = (book: Book, row: number, one = LINEN) => done(putPhotograph(at(row), one).edit(book));

test("a photograph follows its cell when rows are put in and cells are moved, is copied, and is saved and opened", () => {
  const kept = put(BOOK, 1);
  const cells = (book: Book) => book.pages[3]!.cells;
  const settings = { photograph: LINEN.image, photographWords: "blue linen" };
  expect(cells(kept)).toEqual({ A2: settings });
  expect(cells(done(insertRows(3, 0, 2).edit(kept)))).toEqual({ A4: settings });
  expect(cells(done(moveCells(block(1), at(6)).edit(kept)))).toEqual({ A7: settings });
  const paste = withPhotographs(typeCells([]), kept, block(1), block(3, 4));
  expect(Object.keys(cells(done(paste.edit(kept)))!)).toEqual(["A2", "A4", "A5"]);
  const opened = readBook(writeBook(kept));
  expect("book" in opened ? cells(opened.book) : opened.reason).toEqual({ A2: settings });
  expect(cells(done(putPhotograph(at(1), null).edit(kept)))).toBeUndefined();
});

test("what is no small JPEG, PNG or WebP is refused, and so is more than a book holds of them", () => {
  for (const bad of [
    "data:image/svg+xml;base64,AAAA",
    "https://example.org/a.jpg",
    image(60_000),
    'data:image/png;base64,AA"x',
  ])
    expect(putPhotograph(at(0), { image: bad, words: "" }).edit(BOOK)).toEqual({
      refusal: "the photograph is not a small JPEG, PNG or WebP picture: choose its file again",
    });
  let full = BOOK;
  const large = { image: image(50_000), words: "" };
  const most = Math.floor(MOST_PHOTOGRAPHS / large.image.length);
  for (let row = 0; row < most; row += 1) full = put(full, row, large);
  expect(photographsIn(full)).toBe(most * large.image.length);
  expect(putPhotograph(at(most), large).edit(full)).toEqual({
    refusal:
      "the photographs of this book would take 4.1 MB, and a book holds at most 4 MB of them: take one away first",
  });
  // A copy of its page would hold them all twice.
  expect(copyPage(3, "Stock of the widow").edit(full)).toEqual({
    refusal:
      "the photographs of this book would take 8 MB, and a book holds at most 4 MB of them: take one away first",
  });
  expect(copyPage(2, "Another page").edit(full)).not.toHaveProperty("refusal");
  // Another in the place of one that is there takes no more.
  expect(put(full, 0, { ...large, words: "red" })).not.toBe(full);
});
