import { expect, it } from "vitest";
import { holdsBooks, readBooks, writeBooks } from "../../../src/book/books.ts";
import { readBook } from "../../../src/book/read.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";

const cloak = writeBook(blankBook("The squire's cloak", "in", "1/8"));
const apron = writeBook(blankBook("The cook's apron", "cm", "1 mm"));

it("several books go into one file and come out as they were, one that can't be read letter for letter", () => {
  const cut = cloak.slice(0, 300);
  const newer = cloak.replace('"ellwand": 1', '"ellwand": 99');
  const file = writeBooks([cloak, cut, apron, newer, "\u0000"]);
  expect(holdsBooks(file.slice(0, 200))).toBe(true);
  expect(JSON.parse(file).ellwandBooks).toBe(1);
  const texts = readBooks(file) as string[];
  expect(texts).toHaveLength(5);
  expect([texts[1], texts[4]]).toEqual([cut, "\u0000"]);
  expect(readBook(texts[0]!)).toEqual(readBook(cloak));
  expect(readBook(texts[2]!)).toEqual(readBook(apron));
  expect(readBook(file)).toEqual({ reason: expect.stringContaining("holds several books") });
  expect(readBook(texts[3]!)).toEqual({ reason: expect.stringContaining("version 99") });
});

it.each([
  ["cut off", writeBooks([cloak]).slice(0, 300), /cut off or damaged/],
  [
    "of a newer version",
    '{"ellwandBooks": 2, "books": []}',
    /newer Ellwand \(version 2, this one reads up to 1\)/,
  ],
  ["without books", '{"ellwandBooks": 1, "books": []}', /holds no books/],
  ["with something else for books", '{"ellwandBooks": 1, "books": 3}', /holds no books/],
  ["without a version", '{"ellwandBooks": "x", "books": []}', /whole number/],
])("a file of several books that is %s is refused in a sentence", (_what, file, reason) => {
  expect(readBooks(file)).toEqual({ reason: expect.stringMatching(reason) });
});

it("a file of one book is not taken for one of several", () => {
  expect(holdsBooks(cloak)).toBe(false);
});
