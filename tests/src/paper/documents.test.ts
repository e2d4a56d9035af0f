import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { chain } from "../../../src/engine/explain.ts";
import { USUAL_LIMITS } from "../../../src/engine/guards.ts";
import { workingText } from "../../../src/engine/working-text.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { laidOut, printed } from "../../../src/paper/documents.ts";
import { DOCUMENTS, type PaperRequest } from "../../../src/paper/kinds.ts";
import { stripsOf } from "../../../src/paper/strip.ts";
import { bookOf } from "../engine/whatif-books.ts";
import { readPdf } from "./read-pdf.ts";

// By a clock that stands still no formula is stopped for its time, however busy the machine is.
vi.spyOn(USUAL_LIMITS, "clock").mockReturnValue(0);

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
  const laid = await laidOut(engine, asked);
  if ("reason" in laid) throw new Error(laid.reason);
  const done = await laid.print();
  expect(laid.sheets).toBe(done.sheets);
  // Everything is many sheets; what they say is looked at, and their lines with each document.
  const pages = await readPdf(done.bytes, { words: request.what === "all" });
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
  expect(sentences.join()).toMatch(/values have something to check/);
});

test("what is being worked out, a note of a cell and hidden rows say so where the figures stand", async () => {
  const bodice = template("peplum-bodice");
  const pages = bodice.pages.map((page) =>
    page.title === "Cut" ? { ...page, notes: { B8: "ask the weaver" }, hidden: ["4:4"] } : page,
  );
  const waiting = { refusal: "the lay is being worked out", pending: { least: 30 } };
  const engine = new Engine({ ...bodice, pages }, () => waiting);
  const asked = { paper: "a4", day: DAY } as const;
  const textOf = async (what: "cut-list" | "shopping") => {
    const done = await printed(engine, { ...asked, what });
    if ("reason" in done) throw new Error(done.reason);
    expect(done.sentences.join()).toContain("something to check");
    return (await readPdf(done.bytes)).map(({ text }) => text.replace(/\s+/g, " ")).join(" ");
  };
  const cut = await textOf("cut-list");
  expect(cut).toContain("≥ 30 ▲");
  expect(cut).toContain("the lay is being worked out; by its area it takes at least 30 in");
  expect(cut).toContain("Outline, note: ask the weaver");
  expect(cut).toContain("1 row hidden on the page is not printed");
  expect(await textOf("shopping")).toMatch(/cloth_buy_a.* … ▲/);
  expect(await laidOut(engine, { ...asked, what: "lay" })).toEqual({
    reason: expect.stringContaining("the lay is being worked out"),
  });
});

test("a strip and a working that rest on an estimate say so", async () => {
  const book = bookOf({
    worn: "=GIRTH_OVER(27; 1/4)",
    eyelets: "=EYELET_MARK(1; worn; 6; 1)",
  });
  const strip = await read(book, { what: "strip" });
  expect(strip.all).toContain("▲ rests on an estimate: worn (Draft!B1)");
  expect(strip.sentences.join()).toContain("strip 1: rests on an estimate");
  const working = await read(book, { what: "working", cells: ["eyelets"] });
  expect(working.all).toMatch(/eyelets \(Draft!B2\) .* rests on an estimate.* estimated: /);
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
  const asked = { what: "all", scale: "1/8", cells: ["hem"] } as const;
  const plain = await read(template("peplum-bodice"), asked);
  const large = await read(template("peplum-bodice"), { ...asked, large: true, paper: "letter" });
  expect(large.sheets).toBeGreaterThan(plain.sheets);
  for (const { texts, sentences } of [plain, large]) {
    expect(texts[0]).not.toContain("Not in this print");
    for (const { name, title } of DOCUMENTS) if (name !== "all") expect(texts[0]).toContain(title);
    expect(sentences.join()).not.toContain("□");
  }
});

test("the cut list has each piece with its size, how many, its cloth and a picture; a quick length says so", async () => {
  const { all, pages } = await read(template("peplum-bodice"), { what: "cut-list" });
  for (const words of [
    "skirt half",
    "piece 29 1/4 × 19 1/2",
    "mirrored",
    "cross",
    "≈ a length from a quick lay",
  ])
    expect(all.toLowerCase()).toContain(words);
  const pictures = pages[0]!.paths.filter(
    ({ width, runs }) => Math.abs(width - 0.25) < 1e-3 && runs[0]!.length > 4,
  );
  expect(pictures).toHaveLength(4);
});

test("the shopping list has the lengths to buy with the width of their cloth, and boxes at what is worked out", async () => {
  const { all } = await read(template("peplum-bodice"), { what: "shopping" });
  expect(all).toContain("Length to buy (cloth_buy_a, Cut!B9) 45 in wide ≈ 40 1/2 1.125 yd □");
  expect(all).toContain("proved");
  expect(all).not.toContain("cloth_length_a");
  expect(all).toMatch(/Lace to cut 59 1\/2 with its hanging ends □/);
});

test("a lay is drawn to scale with the cloth's width, a ruler, the pieces by name and how it was found", async () => {
  const { all, pages } = await read(template("peplum-bodice"), {
    what: "lay",
    cells: ["cloth_length_a"],
    scale: "1/10",
  });
  for (const words of [
    "45 in wide",
    "quick lay, a search may find a shorter one",
    "1/10 of full size",
    "selvedge",
    "1 skirt half",
    "61.5 %",
  ])
    expect(all).toContain(words);
  const box = (paths: (typeof pages)[number]["paths"]) => {
    const ends = paths.filter(({ width, runs }) => Math.abs(width - 0.25) < 1e-3 && runs[0]!.length === 2);
    return ends.map(({ runs: [run] }) => Math.hypot(run![0]![0] - run![1]![0], run![0]![1] - run![1]![1]));
  };
  // The two cut ends are as long as the cloth is wide.
  const wide = box(pages[0]!.paths).filter((length) => Math.abs(length - 45 * 2.54) < 0.01);
  expect(wide).toHaveLength(2);
});

test("a cell that lays no pieces, and a cell that gives no places, are refused by name", async () => {
  const engine = new Engine(template("peplum-bodice"), layDesk);
  for (const what of ["lay", "strip"] as const) {
    const done = await printed(engine, { what, paper: "a4", day: DAY, cells: ["hem"] });
    expect(done).toEqual({ reason: expect.stringMatching(/Hem, all round|no chosen cell/) });
  }
});

test("a marking strip is as long as its edge over all its sheets, and each place stands where the function has it", async () => {
  const book = bookOf({ eyelets: "=EYELET_MARK(1;20;6;1)", others: "=EYELET_MARK(2;20;6;1)" });
  const { all, pages, says } = await read(book, { what: "strip" });
  expect(says).toBe("1 marking strip");
  expect(all).toContain("eyelets (Draft!B1), others (Draft!B2): EYELET_MARK");
  const inset = 10 + 4;
  const step = 297 - 20 - 10;
  const tiles = pages.filter(({ text }) => /(^|\n)[A-Z]\d\n/.test(text));
  expect(tiles).toHaveLength(2);
  const marks = new Set<string>();
  let end = 0;
  tiles.forEach(({ paths }, i) => {
    for (const { width, runs } of paths) {
      const [[x, y], [x2, y2]] = [runs[0]![0]!, runs[0]![1]!];
      const at = x - inset + i * step;
      if (Math.abs(width - 0.5) < 1e-3 && runs[0]!.length === 2 && x === x2 && y !== y2)
        marks.add((at / 25.4).toFixed(3));
      if (Math.abs(width - 0.5) < 1e-3 && runs[0]!.length > 4)
        end = Math.max(...runs[0]!.map((point) => point[0])) - inset + i * step;
    }
  });
  expect([...marks].map(Number).sort((a, b) => a - b)).toEqual([1, 4.6, 8.2, 11.8, 15.4, 19]);
  expect(Math.abs(end - 20 * 25.4)).toBeLessThan(0.1);
});

test("every function that gives places along an edge prints them on a strip", async () => {
  const given = [...catalogue.values()].filter(({ strip }) => strip);
  // Each on a book of its own: a list of places has no strip where another function has the same places.
  for (const { name, takes, examples } of given) {
    const cells: Record<string, string> = { places: "" };
    const one = (cell: unknown) => (typeof cell === "string" ? `"${cell}"` : String(cell ?? ""));
    const written = Object.keys(takes).map((argument) => {
      const value = examples[0]!.given[argument] ?? null;
      if (!Array.isArray(value)) return one(value);
      const before = Object.keys(cells).length;
      value.forEach((cell, i) => {
        cells[`item_${before + i}_of_list`] = String(cell ?? "");
      });
      return `B${before + 1}:B${before + value.length}`;
    });
    const book = bookOf({ ...cells, places: `=${name}(${written.join(";").replace(/;+$/, "")})` });
    expect(stripsOf(new Engine(book, layDesk), [{ page: 0, row: 0, column: 1 }]).length, name).toBe(1);
  }
  const marks = bookOf({
    list: '=MARKS("1; 3 1/2; 6 in")',
    second: "=MARK_AT(list; 2)",
    own: '=MARK_AT("2; 5 in"; 1)',
  });
  const { all, says } = await read(marks, { what: "strip" });
  expect(says).toBe("2 marking strips");
  expect(all).toContain("own (Draft!B3): MARK_AT");
});

test("the working on paper is the text that explain gives", async () => {
  const engine = new Engine(template("peplum-bodice"), layDesk);
  const { all } = await read(template("peplum-bodice"), { what: "working", cells: ["spread_per_gap"] });
  const squashed = all.replace(/\s/g, "");
  for (const working of chain(engine, { page: 1, row: 14, column: 1 }))
    for (const line of workingText(working, engine.book).split("\n"))
      expect(squashed).toContain(line.replace(/\s/g, ""));
});

test("everything begins with a sheet that says on which pages each document is", async () => {
  const { texts } = await read(template("petticoat-and-cape"), { what: "all", scale: "1/8" });
  const [first] = texts;
  expect(first).toContain("Marking strips: no cell gives places along an edge");
  for (const [, title, from] of first!.matchAll(
    /(Measurement chart|Cut list|Fitting log|Shopping list|Lay) .*?(\d+)(?:–\d+)?(?= [A-Z]|$)/g,
  ))
    expect(texts[Number(from) - 1]).toMatch(new RegExp(`^${title}`));
});

test("a chart of several wearers is drawn for all of them, marks estimates, and leaves out lines still to be filled", async () => {
  const idle = '=IF(B4="";"";"ok")';
  const rows = [
    ["Ann", "shift", "29"],
    ["Ann", "stays", "=GIRTH_OVER(C1; 1/8)"],
    ["the baker", "shirt", "38"],
    [idle],
    ["", "", idle],
  ];
  const book = {
    ...chartOf(["Wearer", "Worn beneath", "Waist girth"], rows),
    names: { wearer: "Measure!A1" },
  };
  const { all, pages } = await read(book, { what: "chart" });
  expect(all).not.toContain("Drawn for");
  expect(all).toContain("est. 29 3/4");
  expect(all).toContain("est. an estimate, or worked out from one: measure before you cut");
  // A line across the sheet below the headings, and one below each of the three rows.
  const empty = await read(
    { ...book, pages: [{ ...book.pages[0]!, rows: rows.slice(0, 3) }] },
    { what: "chart" },
  );
  expect(pages[0]!.paths.length).toBe(empty.pages[0]!.paths.length);
});
