import { readFileSync } from "node:fs";
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

test("a measurement that is far from right is one problem beside its own, which leads to it", () => {
  const found = newProblems(garment("measurement-chart"), "Measure", 5, 1, "91.4 cm");
  const accusing = found.filter(([sentence]) => String(sentence).includes("measure cervical height first"));
  expect(accusing).toEqual([[expect.any(String), ["Measure!B6"]]]);
});
