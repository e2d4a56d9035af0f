import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { laidOut, printed } from "../../../src/paper/documents.ts";
import { DOCUMENTS, type PaperRequest } from "../../../src/paper/kinds.ts";
import { readPdf } from "./read-pdf.ts";

const template = (name: string): Book => {
  const reading = readBook(readFileSync(`templates/${name}.json`, "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
};

const DAY = new Date(2026, 4, 20);

/** The document with the words of each sheet, line breaks as blanks. */
async function read(book: Book, request: Omit<PaperRequest, "paper" | "day"> & { paper?: string }) {
  const engine = new Engine(book, layDesk);
  const asked = { paper: "a4", day: DAY, ...request };
  const done = await printed(engine, asked);
  if ("reason" in done) throw new Error(done.reason);
  expect(await laidOut(engine, asked)).toMatchObject({ sheets: done.sheets, says: done.says });
  const pages = await readPdf(done.bytes);
  expect(pages).toHaveLength(done.sheets);
  const texts = pages.map(({ text }) => text.replace(/\s+/g, " "));
  texts.forEach((text, i) => {
    expect(text).toContain(`page ${i + 1} of ${done.sheets}`);
    expect(text).toContain("2026-05-20");
  });
  return { ...done, pages, texts, all: texts.join(" ") };
}

/** A book of one Measure page with these columns and rows. */
function chartOf(headings: readonly string[], rows: readonly (readonly string[])[]): Book {
  const blank = blankBook("The harvest scene", "in", "1/8");
  const columns = headings.map((heading, i) => ({
    heading,
    kind: i === 0 ? ("text" as const) : ("any" as const),
    width: 100,
  }));
  return { ...blank, pages: [{ ...blank.pages[0]!, columns, rows }] };
}

test("the measurement chart has every figure of its page, its layers and dates, and says where to look", async () => {
  const { all, sentences } = await read(template("peplum-bodice"), { what: "chart" });
  for (const words of [
    "hip girth over the pad",
    "42 1/2",
    "25 3/4",
    "2026-05-06",
    "Squire's lady",
    "Lengths are in inches",
    "Drawn for: miller's daughter",
  ])
    expect(all).toContain(words);
  expect(sentences).toEqual([]);
});

test("a blank chart has the names of what is measured and none of the figures", async () => {
  const { all } = await read(template("peplum-bodice"), { what: "chart", blank: true });
  for (const words of ["hip girth over the pad", "shift, stays, hip pad", "Widow", "Taken by:"])
    expect(all).toContain(words);
  for (const figure of ["42 1/2", "25 3/4", "2026-05-06"]) expect(all).not.toContain(figure);
});

test("a figure in error and a blank cell that a formula needs say so beneath their row", async () => {
  const book = chartOf(
    ["Measurement", "Widow"],
    [
      ["waist", "27"],
      ["hip", ""],
      ["seam", "=B1/0"],
      ["half a hip", "=EASE(B2;B1)"],
    ],
  );
  const { all, sentences } = await read(book, { what: "chart" });
  expect(all).toContain("error ▲");
  expect(all).toContain("divides by zero");
  expect(all).toMatch(/▲ Widow: .*(empty|blank)/);
  expect(sentences.join()).toMatch(/figures have something to check/);
});

test("a chart that is too wide and too long goes on in parts, with its first column and its headings on each sheet", async () => {
  const wearers = Array.from({ length: 30 }, (_, i) => `villager number ${i + 1}`);
  const rows = Array.from({ length: 60 }, (_, i) => [
    `measure ${i + 1}`,
    ...wearers.map((_, k) => `${1000 + 31 * i + k}`),
  ]);
  const book = chartOf(["Measurement", ...wearers], rows);
  const { texts, all, pages } = await read(book, { what: "chart" });
  expect(pages.length).toBeGreaterThan(4);
  for (const text of texts) expect(text).toContain("Measurement");
  for (const wearer of wearers) expect(all).toContain(wearer);
  const cells = new Set(pages.flatMap(({ text }) => text.split("\n")));
  for (const cell of rows.flat()) expect(cells).toContain(cell);
});

test("what cannot be printed is refused in a sentence", async () => {
  const engine = new Engine(template("peplum-bodice"), layDesk);
  const asked = { what: "chart", paper: "a4", day: DAY } as const;
  expect(await printed(engine, { ...asked, paper: "a9" })).toEqual({
    reason: expect.stringContaining('not "a9"'),
  });
  expect(await printed(engine, { ...asked, page: "Mesure" })).toEqual({
    reason: expect.stringContaining("is Measure meant?"),
  });
  expect(await laidOut(engine, { ...asked, what: "pattern", scale: "1/3" })).toEqual({
    reason: expect.stringContaining("1/8"),
  });
});

test("each kind of document is made from the ready book, in plain and in large type", async () => {
  for (const { name } of DOCUMENTS) {
    const plain = await read(template("peplum-bodice"), { what: name, scale: "1/8" });
    expect(plain.sheets).toBeGreaterThan(0);
    expect(plain.all).toContain("Miller's Daughter");
    expect(plain.sentences.join()).not.toContain("□");
  }
});
