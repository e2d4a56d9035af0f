import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook, type Page } from "../../../src/book/shape.ts";
import { bookParts, writeBook } from "../../../src/book/write.ts";
import { book } from "./books.ts";

const opened = (text: string): Book => {
  const reading = readBook(text);
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
};

const folder = new URL("../../../templates/", import.meta.url);

test.each(readdirSync(folder).filter((name) => name.endsWith(".json")))(
  "the ready book %s is in the very text it is saved as",
  (name) => {
    const text = readFileSync(new URL(name, folder), "utf8");
    expect(writeBook(opened(text))).toBe(text);
  },
);

test("a book saved, opened and saved again is the same text, and the same book", () => {
  fc.assert(
    fc.property(book, (one) => {
      const text = writeBook(one);
      const again = opened(text);
      expect(writeBook(again)).toBe(text);
      expect(again.pages.map(({ notes }) => notes)).toEqual(one.pages.map(({ notes }) => notes));
      const shown = ({ columns, cells, frozen, hidden }: Page) => ({ columns, cells, frozen, hidden });
      expect(again.pages.map(shown)).toEqual(one.pages.map(shown));
      expect([again.title, again.about, again.unit, again.mark, again.names, again.trials, again.lays]).toEqual([
        one.title, one.about, one.unit, one.mark, one.names, one.trials, one.lays,
      ]); // biome-ignore format: in pairs
    }),
    { seed: 20_260_506, numRuns: 200 },
  );
});

test("every text typed comes back as it was typed, blanks at the ends aside", () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.string({ unit: "binary" }), { maxLength: 4 }), { maxLength: 5 }),
      (rows) => {
        const blank = blankBook("Withy Green", "in", "1/8");
        const pages = [{ ...blank.pages[0]!, rows }, ...blank.pages.slice(1)];
        const again = opened(writeBook({ ...blank, pages })).pages[0]!.rows;
        rows.forEach((row, r) => {
          row.forEach((typed, c) => {
            expect(again[r]?.[c] ?? "").toBe(typed);
          });
        });
      },
    ),
    { seed: 20_260_507, numRuns: 200 },
  );
});

test("one row of a page is one line of the file, so that two books can be compared", () => {
  const blank = blankBook("Withy Green", "in", "1/8");
  const page = { ...blank.pages[0]!, rows: [["waist", "27"], [], ["hip", "42 1/2", ""], []] };
  const text = writeBook({ ...blank, pages: [page] });
  expect(text.split("\n").filter((line) => /^ {8}\[/.test(line))).toEqual([
    '        ["waist","27"],',
    "        [],",
    '        ["hip","42 1/2"]',
  ]);
});

test("a book says version 2 only when a cell follows a fitting, which a reader of version 1 would leave out", () => {
  const blank = blankBook("The squire's coat", "cm", "1 mm");
  expect(writeBook(blank)).toMatch(/^\{\n {2}"ellwand": 1,/);
  const [page, ...others] = blank.pages;
  const fitted = { ...blank, pages: [{ ...page!, cells: { B3: { fitting: "coat side" } } }, ...others] };
  expect(writeBook(fitted)).toMatch(/^\{\n {2}"ellwand": 2,/);
  expect(opened(writeBook(fitted)).pages[0]!.cells).toEqual({ B3: { fitting: "coat side" } });
});

test("a book that shares rows with the one written before is written as if it shared none", () => {
  const rows = Array.from({ length: 6 }, (_, i) => [`role ${i}`, `${60 + i}`]);
  const blank = blankBook("The miller's smock", "cm", "1 mm");
  const withRows = (all: readonly (readonly string[])[]): Book => ({
    ...blank,
    pages: blank.pages.map((page, i) => (i === 0 ? { ...page, rows: all } : page)),
  });
  writeBook(withRows(rows));
  for (const next of [
    rows.with(2, ["role 2", "99"]),
    rows.toSpliced(1, 0, ["new", ""]),
    rows.toSpliced(0, 3),
    [...rows].reverse(),
    [rows[0]!, rows[0]!, ...rows],
    [],
    rows,
  ])
    expect(writeBook(withRows(next))).toBe(writeBook(structuredClone(withRows(next))));
});

test("one typed cell makes one part of a large book's text anew, and a row put in those that begin elsewhere", () => {
  const rows = Array.from({ length: 2600 }, (_, i) => [`role ${i}`, `${60 + (i % 30)}`]);
  const blank = blankBook("The whole village", "cm", "1 mm");
  const withRows = (all: readonly (readonly string[])[]): Book => ({
    ...blank,
    pages: blank.pages.map((page, i) => (i === 1 ? { ...page, rows: all } : page)),
  });
  let last: string[] = [...bookParts(withRows(rows))];
  const anew = (all: readonly (readonly string[])[]): number => {
    const next = [...bookParts(withRows(all))];
    expect(next.join("")).toBe(writeBook(structuredClone(withRows(all))));
    const count = next.filter((part) => !last.includes(part)).length;
    last = [...bookParts(withRows(all))];
    return count;
  };
  const typed = rows.with(1300, ["role 1300", "99"]);
  expect(anew(typed)).toBe(1);
  expect(anew(typed.toSpliced(1300, 0, ["a new role", ""]))).toBe(4);
  expect(anew(typed)).toBe(4);
  expect(anew(typed.slice(0, -1))).toBe(1);
});
