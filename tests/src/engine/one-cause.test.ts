import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readGarment } from "../../../src/book/garment.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { pasteBlock } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const ready = (name: string): Book => {
  const read = readBook(readFileSync(`templates/${name}.json`, "utf8"));
  if ("reason" in read) throw new Error(read.reason);
  return read.book;
};
const garment = (name: string): Book => {
  const read = readGarment(readFileSync(`templates/garments/${name}.json`, "utf8"));
  if ("reason" in read) throw new Error(read.reason);
  return read.garment.books.in;
};

/** The problems that a book has only once a cell holds something else: the sentence of each, and the cells it leads to. */
function newProblems(book: Book, page: string, row: number, column: number, typed: string) {
  const store = new Store(book, layDesk);
  const said = () =>
    checks(store.engine).map(({ place, sentence, at }) => ({
      key: `${store.engine.address(place)} ${sentence}`,
      sentence,
      at: at.map((one) => store.engine.address(one)),
    }));
  const before = new Set(said().map(({ key }) => key));
  const index = book.pages.findIndex(({ title }) => title === page);
  store.run(pasteBlock({ page: index, row, column }, [[typed]]));
  return said()
    .filter(({ key }) => !before.has(key))
    .map(({ sentence, at }) => [sentence, at]);
}

test("a wrong day of the draft is one problem with its cell, however many measurements rest on it", () => {
  for (const typed of ["0", "20260", "soon"])
    expect(newProblems(ready("peplum-bodice"), "Measure", 1, 1, typed), typed).toEqual([
      [expect.stringMatching(/^today /), ["Measure!B2"]],
    ]);
  expect(newProblems(ready("peplum-bodice"), "Measure", 1, 1, "2062-05-20")).toEqual([
    ["today is more than ten years from the day of the measurement; please check both dates", ["Measure!B2"]],
  ]);
  for (const typed of ["0", "5000", "2126-05-04"])
    expect(newProblems(ready("peplum-bodice"), "Measure", 3, 6, typed), typed).toEqual([
      [expect.stringMatching(/please check both dates$/), ["Measure!G4"]],
    ]);
  expect(newProblems(ready("whole-cast"), "Measure", 0, 3, "20260")).toEqual([
    [expect.stringMatching(/^today is not a day/), ["Measure!D1"]],
  ]);
});

test("what is unusual for the front and the back of a bodice is one problem, with the cells it is about", () => {
  const bodice = garment("bodice");
  const at = (label: string): [number, number] => {
    const page = bodice.pages.find(({ title }) => title === "Draft")!;
    const row = page.rows.findIndex((cells) => cells[0]!.toLowerCase().startsWith(label));
    return [row, 1];
  };
  const found = newProblems(bodice, "Draft", ...at("ease at the bust"), "10");
  expect(found).toEqual([
    [
      expect.stringMatching(/^BODICE_FOUNDATION: the bust_ease 10 in is above/),
      [expect.stringMatching(/^Draft!B/)],
    ],
  ]);
});

test("a measurement that is far from right is one problem, which stands in its own row and leads to it", () => {
  expect(newProblems(garment("measurement-chart"), "Measure", 5, 1, "91.4 cm")).toEqual([
    [
      expect.stringMatching(/^waist height was below cervical height .* please measure again$/),
      ["Measure!B6"],
    ],
  ]);
  // Beside a stature of 2.5 in, bust and waist would seem to have changed places.
  expect(newProblems(garment("measurement-chart"), "Measure", 4, 1, "2.5")).toEqual([
    [expect.stringMatching(/^cervical height was at least 7 5.8 in below stature/), ["Measure!B5"]],
  ]);
});

test("whatever is typed in a measurement chart is one problem at most, which leads to the cell", () => {
  const book = garment("measurement-chart");
  const store = new Store(book, layDesk);
  const before = new Set(checks(store.engine).map((one) => `${one.address} ${one.sentence}`));
  const rows = book.pages[0]!.rows;
  let [tried, said] = [0, 0];
  for (const [row, cells] of rows.entries()) {
    const figure = Number.parseFloat(cells[1] ?? "");
    if (!(figure > 0) || cells[1]!.startsWith("20")) continue;
    const place = { page: 0, row, column: 1 };
    for (const typed of ["", "1e9", "wide", "2.5", String(figure * 10), `${figure} cm`]) {
      store.run(pasteBlock(place, [[typed]]));
      const found = checks(store.engine).filter((one) => !before.has(`${one.address} ${one.sentence}`));
      const where = `${store.engine.address(place)} "${typed}": ${found.map(({ sentence }) => sentence).join(" | ")}`;
      expect(found.length, where).toBeLessThanOrEqual(1);
      for (const { place: at, at: about } of found)
        expect(
          [at, ...about].map((one) => store.engine.address(one)),
          where,
        ).toContain(store.engine.address(place));
      tried += 1;
      said += found.length;
      store.undo();
    }
  }
  expect(tried).toBeGreaterThan(100);
  expect(said / tried).toBeGreaterThan(0.7);
});

test("what rests on a figure that is refused waits for it: the list says what is wrong with the figure itself", () => {
  // The width to gather and the band are both refused; so is the length of the breadths, with more figures behind it.
  expect(newProblems(garment("petticoat"), "Measure", 3, 1, "320")).toEqual([
    ["waist must be at most 120 in, not 320 in", ["Measure!B4"]],
  ]);
  expect(newProblems(garment("set-in-sleeve"), "Draft", 11, 1, "100")).toEqual([
    ["ease must be at most 12 in, not 100 in", ["Draft!B12"]],
  ]);
});

test("a figure of a chart that no body has is one problem, though garments refuse what they are worked out from it", () => {
  // A slip of the keys, and a figure ten times as large: the gores of a skirt can't be so wide.
  for (const [column, typed] of [
    [7, "1e9"],
    [8, "1e9"],
    [7, "260"],
    [8, "410"],
  ] as const)
    expect(newProblems(garment("company"), "Measure", 3, column, typed)).toEqual([
      [expect.stringMatching(/far above that of any body/), [`Measure!${"ABCDEFGHI"[column]}4`]],
    ]);
});

test("a wrong number in the list of pieces is one cause of all seams that do not come out, and they lead to it", () => {
  for (const typed of ["3", "20"]) {
    const found = newProblems(ready("whole-cast"), "Daughter", 40, 2, typed);
    const seams = found.filter(([sentence]) => / longer[;:]| shorter[;:]/.test(String(sentence)));
    expect(seams, typed).toEqual([[expect.stringContaining("the front's waist"), ["Daughter!C41"]]]);
  }
});

test("whatever is typed in place of a measurement, its garment has one problem at most, and that leads to the cell", () => {
  const names = readdirSync("templates/garments").map((file) => file.replace(".json", ""));
  let [tried, said] = [0, 0];
  for (const name of names.filter((one) => !["company", "measurement-chart"].includes(one))) {
    const book = garment(name);
    const store = new Store(book, layDesk);
    const problems = () => checks(store.engine).map((one) => ({ ...one, key: `${one.address} ${one.sentence}` }));
    const before = new Set(problems().map(({ key }) => key));
    const page = book.pages.findIndex(({ title }) => title === "Measure");
    for (const [row, cells] of (book.pages[page]?.rows ?? []).entries()) {
      if (book.pages[page]!.columns[1]?.kind !== "length" || !/^\d/.test(cells[1] ?? "")) continue;
      // A blank, a slip of the hand, a slip of the keys and a word; a measured day stands in this column too.
      if (/^\d{4}-/.test(cells[1]!)) continue;
      const place = { page, row, column: 1 };
      for (const typed of ["", "-3", "1e9", "wide"]) {
        store.run(pasteBlock(place, [[typed]]));
        const found = problems().filter(({ key }) => !before.has(key));
        const where = `${name} ${store.engine.address(place)} "${typed}": ${found.map(({ sentence }) => sentence).join(" | ")}`;
        expect(found.length, where).toBeLessThanOrEqual(1);
        const own = store.engine.address(place);
        for (const { place: at, at: about } of found)
          expect([at, ...about].map((one) => store.engine.address(one)), where).toContain(own);
        tried += 1;
        said += found.length;
        store.undo();
      }
    }
    store.engine.destroy();
  }
  expect(tried).toBeGreaterThan(250);
  // What is said nowhere is a depth that may be 0 or below it, and a figure that nothing uses.
  expect(said / tried).toBeGreaterThan(0.8);
}); // biome-ignore format: a table

test("a piece wider than the cloth leads to its line of the cut list, a cloth narrower than every piece to its width", () => {
  const wide = newProblems(garment("circle-skirt"), "Draft", 12, 1, "30");
  // The hem is doubted as well. It may be meant, so that the error is what is listed.
  expect(wide).toEqual([
    [expect.stringMatching(/^skirt panel is .* wider than the cloth/), ["Draft!B14", "Draft!B13"]],
  ]);
  const narrow = newProblems(garment("apron"), "Cut", 6, 1, "2.5");
  expect(narrow).toEqual([[expect.stringMatching(/^apron breadth is .* wider than the cloth/), ["Cut!B7"]]]);
});

test("cloth in stock that is not enough leads to its length, a piece that no cloth holds to its line", () => {
  const short = newProblems(ready("peplum-bodice"), "Cut", 15, 1, "30");
  expect(short).toEqual([[expect.stringMatching(/no place for 1 of waist stay .* short by/), ["Cut!B16"]]]);
  expect(newProblems(ready("peplum-bodice"), "Cut", 14, 1, "20")).toEqual([
    [expect.stringMatching(/^skirt half is .* wider than the cloth; hem guard is/), ["Draft!B35", "Cut!B2"]],
  ]);
});
