import { expect, test } from "vitest";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { run } from "./io.ts";

/** A book with photographs in some cells of its first page and of its second. */
function stock(first: number, second: number): Book {
  const book = blankBook("Stock", "in", "1/8");
  const photographs = (count: number) =>
    Object.fromEntries(
      Array.from({ length: count }, (_, i) => [`A${i + 1}`, { photograph: "data:image/jpeg;base64,AAAA" }]),
    );
  const pages = book.pages.map((page, i) => ({
    ...page,
    rows: [["linen"], ["wool"]],
    ...(i < 2 && { cells: photographs([first, second][i]!) }),
  }));
  return { ...book, pages };
}

const exported = async (book: Book, ...args: string[]) =>
  (await run(book, "export", "book.json", "--out", "out", ...args)).out;

test.each(["xlsx", "ods"])("an export to %s says how many photographs it leaves out", async (to) => {
  expect(await exported(stock(2, 1), "--to", to)).toMatch(
    /; 3 photographs are left out, because a spreadsheet from Ellwand holds no pictures; they stay in the book$/,
  );
  expect(JSON.parse(await exported(stock(1, 0), "--to", to, "--json"))).toMatchObject({
    photographsLeftOut: 1,
  });
  expect(await exported(stock(0, 0), "--to", to)).not.toMatch(/photograph/);
});

test("a page as a table says how many of its own it leaves out", async () => {
  const pages = blankBook("Stock", "in", "1/8").pages.map(({ title }) => title);
  expect(await exported(stock(2, 1), "--to", "csv", "--page", pages[1]!)).toMatch(
    /; one photograph is left out, because a table from Ellwand holds no pictures; it stays in the book$/,
  );
});
