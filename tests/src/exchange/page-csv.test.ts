import { readFileSync } from "node:fs";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { pageCsv } from "../../../src/exchange/page-csv.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { run } from "../command/io.ts";

/** Lines of fields, as an independent reader has them. */
function read(text: string): string[][] {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: ",", newline: "\r\n" });
  expect(errors).toEqual([]);
  expect(data.pop()).toEqual([""]);
  return data;
}

const ROWS = [
  ["waist", "27 1/2", ""],
  ['a "long", odd\nname', "=B1/3", "2026-05-04"],
  ["+cmd|x", "@SUM(A1)", "-"],
  ["error", "=1/0", "=RECTANGLE(10;20)"],
  ["", "", ""],
];

const bookOf = (rows: readonly (readonly string[])[], more: Partial<Book> = {}): Book => {
  const blank = blankBook("The miller's cloak", "in", "1/8");
  const columns = ["What", "Figure", "Third"].map((heading, i) => ({
    heading,
    kind: i === 0 ? ("text" as const) : ("any" as const),
    width: 100,
  }));
  const page = { title: "Draft", stage: "Draft" as const, columns, rows, notes: {} };
  return {
    ...blank,
    pages: [
      page,
      { ...page, title: "Bare", columns: [{ heading: "", kind: "any" as const, width: 50 }], rows: [["1"]] },
    ],
    ...more,
  };
};

const engineOf = (book: Book) => new Engine(book, layDesk);

describe("a page as CSV", () => {
  test("has its headings and its cells as the page shows them, and a reason where there is no answer", () => {
    const [head, first, second, third, fourth, ...rest] = read(pageCsv(engineOf(bookOf(ROWS)), 0, "shown"));
    expect(head).toEqual(["What", "Figure", "Third"]);
    expect(first).toEqual(["waist", "27 1/2", ""]);
    expect(second).toEqual(['a "long", odd\nname', "9 1/8", "2026-05-04"]);
    expect(third).toEqual(["'+cmd|x", "'@SUM(A1)", "'-"]);
    expect(fourth![1]).toMatch(/^check: this divides by zero/);
    expect(fourth![2]).toBe("piece 10 × 20");
    expect(rest, "the blank row at the end").toEqual([]);
  });

  test("in full has every place of a figure, a day as ISO writes it and the outline of a piece", () => {
    const lines = read(pageCsv(engineOf(bookOf(ROWS)), 0, "full"));
    expect(Number(lines[2]![1])).toBeCloseTo(27.5 / 3, 9);
    expect(lines[2]![2]).toBe("2026-05-04");
    expect(lines[4]![2]).toMatch(/^M /);
  });

  test("has the book's decimal comma within quotes, and no line of headings when there are none", () => {
    const comma = engineOf(bookOf([["x", "0,5"]], { decimal: "comma", unit: "cm", mark: "1 mm" }));
    expect(pageCsv(comma, 0, "full")).toBe('What,Figure,Third\r\nx,"0,5",\r\n');
    expect(pageCsv(comma, 1, "shown")).toBe("1\r\n");
  });

  test("of a ready book has as many lines as the page has rows, and no field that begins a formula", () => {
    const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
    if ("reason" in reading) throw new Error(reading.reason);
    const engine = engineOf(reading.book);
    for (const [index, page] of reading.book.pages.entries()) {
      const lines = read(pageCsv(engine, index, "shown"));
      expect(lines.length).toBe(page.rows.length + 1);
      for (const field of lines.flat()) expect(field).not.toMatch(/^\s*(?:[=@]|[-+](?![\d.]+$))/);
    }
  });
});

describe("export --to csv", () => {
  test("writes the page to a file or to standard output", async () => {
    const book = bookOf(ROWS);
    const text = pageCsv(engineOf(book), 0, "shown");
    const { status, files } = await run(
      book, "export", "book.json", "--to", "csv", "--page", "draft", "--out", "draft.csv",
    ); // biome-ignore format: a command line
    expect([status, files]).toEqual([0, { "draft.csv": text }]);
    const shown = await run(
      book, "export", "book.json", "--to", "csv", "--page", "Draft", "--full", "--out", "-",
    ); // biome-ignore format: a command line
    expect(shown.out).toBe(pageCsv(engineOf(book), 0, "full"));
  });

  test.each([
    [["--out", "x.csv"], "export needs a format: --to csv, --to xlsx, --to ods"],
    [["--to", "pdf", "--out", "x"], /^--to must be .*csv.*, not "pdf"$/],
    [["--to", "csv", "--page", "Draft"], "export needs a file to write, such as --out page.csv"],
    [["--to", "csv", "--out", "x.csv"], "--page must say which page to write; the pages are Draft, Bare"],
    [["--to", "csv", "--page", "Hems", "--out", "x.csv"], 'this book has no page "Hems"; the pages are Draft, Bare'],
  ])("%j is refused in one sentence", async (args, sentence) => {
    const { status, err, files } = await run(bookOf(ROWS), "export", "book.json", ...args);
    expect([status, files]).toEqual([2, {}]);
    expect(err).toMatch(sentence);
  }); // biome-ignore format: a table
});
