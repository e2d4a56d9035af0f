/** Figures that make no sense for what they are called are doubted where they stand, whether or not a formula uses them. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readGarment } from "../../../src/book/garment.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { Kinds } from "../../../src/engine/kinds.ts";
import { namedFigures } from "../../../src/engine/named-figures.ts";
import { layDesk } from "../../../src/lay/desk.ts";

/** What is said of a figure that stands in a row with this label, in a column with this heading. */
function said(label: string, typed: string, heading = "Value", unit: "in" | "cm" = "in"): string {
  const blank = blankBook("The miller", unit, unit === "in" ? "1/8" : "1 mm");
  const columns = [
    { heading: "What", kind: "text" as const, width: 100 },
    { heading, kind: heading === "Date" ? ("date" as const) : ("any" as const), width: 100 },
  ];
  const engine = new Engine(
    { ...blank, pages: [{ ...blank.pages[0]!, columns, rows: [[label, typed]] }] },
    layDesk,
  );
  const found = checks(engine);
  expect(engine.view({ page: 0, row: 0, column: 1 }).problem?.sentence ?? "").toBe(found[0]?.sentence ?? "");
  engine.destroy();
  return found.map(({ sentence }) => sentence).join(" | ");
}

test.each([
  ["Day of this draft", "0", /no day/],
  ["Day of this draft", "5000", /no day/],
  ["Taken on", "2126-05-04", /years from 1990 to 2100/],
  ["Price a yard", "0", /price of 0/],
  ["Price a yard", "0.00", /price of 0/],
  ["Front, how many", "270", /more than 60/],
  ["Gores", "-6", /below zero/],
  ["Ease at the hand", "-3", /smaller than the body/],
  ["Ease at the hand", "−1 1/2", /smaller than the body/],
  ["Hem allowance", "-3", /below zero/],
  ["Hem off the floor", "-3", /below zero/],
  ["Cloth shrinks by", "30 %", /3 % are 0.03/],
  ["waist girth", "0", /no measurement of a body/],
  ["stature", "-3", /no measurement of a body/],
])("%s: %s is doubted", (label, typed, words) => {
  expect(said(label, typed)).toMatch(words);
});

test.each([
  ["Day of this draft", "2026-05-20"],
  ["Days until the play", "270"],
  ["Price a yard", "9.50"],
  ["Front, how many", "2"],
  ["Buttons", "270"],
  ["Ease at the hand", "0"],
  ["Ease at the hand", "1/2"],
  ["Change at the waist", "-1/2"],
  ["Cloth shrinks by", "0.03"],
  ["waist girth", "27"],
  ["pages of the play", "0"],
])("%s: %s is nothing to doubt", (label, typed) => {
  expect(said(label, typed)).toBe("");
});

test("the heading of a column, and a column of dates, say the same as the words of a row", () => {
  expect(said("skirt", "270", "How many")).toMatch(/more than 60/);
  expect(said("linen", "0", "Price")).toMatch(/price of 0/);
  expect(said("bodice", "20260", "Date")).toMatch(/no day/);
  // A length under the heading of another list is no number of pieces.
  expect(said("first remnant", "270 cm", "How many", "cm")).toBe("");
});

test("no ready book and no garment has such a figure", () => {
  const files = ["templates", "templates/garments"].flatMap((folder) =>
    readdirSync(folder).flatMap((name) => (name.endsWith(".json") ? [`${folder}/${name}`] : [])),
  );
  for (const file of files) {
    const text = readFileSync(file, "utf8");
    const reading = file.includes("garments/") ? readGarment(text) : readBook(text);
    if ("reason" in reading) throw new Error(reading.reason);
    const books: Book[] = "garment" in reading ? Object.values(reading.garment.books) : [reading.book];
    for (const book of books) expect(namedFigures(book, new Kinds(book)), file).toEqual([]);
  }
});

test("after each of many edits, of rows put in and taken out too, the same is doubted as in a book that is read anew", () => {
  const blank = blankBook("The miller", "in", "1/8");
  const columns = ["What", "Price", "Value"].map((heading) => ({
    heading,
    kind: "any" as const,
    width: 100,
  }));
  const labels = ["Gores", "waist girth", "Hem allowance", "Day of this draft", "pages"];
  const figures = ["0", "-3", "270", "27", "", "2126-05-04"];
  let seed = 7;
  const any = <T>(of: readonly T[]): T => {
    seed = (seed * 48_271) % 2_147_483_647;
    return of[seed % of.length]!;
  };
  const row = () => [any(labels), any(figures), any(figures)];
  let book: Book = {
    ...blank,
    pages: [{ ...blank.pages[0]!, columns, rows: Array.from({ length: 30 }, row) }],
  };
  let most = 0;
  for (let step = 0; step < 200; step += 1) {
    const [page] = book.pages;
    const at = step % page!.rows.length;
    const put = any([0, 1, 1, 1, 1, 2]);
    const rows = page!.rows.toSpliced(at, 1, ...Array.from({ length: put }, row));
    const heading = any(["Price", "Price", "Quantity"]);
    const columns =
      step % 40 === 0 ? page!.columns.with(1, { ...page!.columns[1]!, heading }) : page!.columns;
    book = { ...book, pages: [{ ...page!, columns, rows }] };
    const anew: Book = JSON.parse(JSON.stringify(book));
    const found = namedFigures(book, new Kinds(book));
    expect(found).toEqual(namedFigures(anew, new Kinds(anew)));
    // The one read anew is now the last; the next edit begins from the book again.
    expect(namedFigures(book, new Kinds(book))).toEqual(found);
    most = Math.max(most, found.length);
  }
  expect(most).toBeGreaterThan(10);
});
