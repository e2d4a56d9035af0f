import { readFileSync } from "node:fs";
import { HyperFormula } from "hyperformula";
import { expect, test, vi } from "vitest";
import { findPlace } from "../../../src/book/address.ts";
import { aligned } from "../../../src/book/align.ts";
import { copyPage } from "../../../src/book/copy-page.ts";
import * as edit from "../../../src/book/edit.ts";
import { readBook } from "../../../src/book/read.ts";
import { moveColumns } from "../../../src/book/reorder.ts";
import type { Book } from "../../../src/book/shape.ts";
import { bookDifferences } from "../../../src/engine/book-differences.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "./whatif-books.ts";

const skirt: Book = bookOf({ waist: "27", ease: "1", seam: "=waist+ease", hem: "=B3*2", sum: "=SUM(B1:B4)" });
const put = (book: Book, address: string, typed: string): Book =>
  edit.type(book, [{ ...findPlace(book, address)!, typed }]);
const between = (first: Book, second: Book) => bookDifferences(first, second, layDesk);

test("lines that were put in or taken out leave the others paired", () => {
  expect(aligned(["a", "b", "c"], ["a", "x", "b", "c"])).toEqual([0, 2, 3]);
  expect(aligned(["a", "b", "c"], ["a", "c"])).toEqual([0, null, 1]);
  expect(aligned(["a", "old", "c"], ["a", "new", "c"])).toEqual([0, 1, 2]);
  expect(aligned([], ["a"])).toEqual([]);
});

test("a book and itself differ in nothing, and rows put in change no formula below them", () => {
  expect(between(skirt, skirt)).toEqual({ changes: [], answers: [] });
  const lower = put(edit.insertRows(skirt, 0, 1, 2), "Draft!A2", "shift");
  expect(between(skirt, lower)).toEqual({
    changes: [{ is: "cell", where: "Draft!A2", label: "What", before: "", after: "shift" }],
    answers: [],
  });
});

test("a day beside a measurement is called by the measurement and the heading, not by the text next to it", () => {
  const begun = bookOf({ waist: "27" });
  const page = { ...begun.pages[0]!, columns: ["Measurement", "Value", "Taken over", "Taken on"].map((heading) => ({ ...begun.pages[0]!.columns[0]!, heading })), rows: [["waist girth", "27", "shift", "2026-05-04"]] }; // biome-ignore format: short
  const first = { ...begun, pages: [page] };
  const { changes } = between(first, put(first, "Draft!D1", "2026-06-01"));
  expect(changes.map(({ label }) => label)).toEqual(["waist girth, Taken on"]);
});

test("a typed figure is a change, and every answer that came out otherwise is told with its label", () => {
  const { changes, answers } = between(skirt, put(skirt, "Draft!B1", "28"));
  expect(changes).toEqual([{ is: "cell", where: "Draft!B1", label: "waist", before: "27", after: "28" }]);
  expect(answers).toEqual([
    { where: "Draft!B3", label: "seam", before: "28", after: "29" },
    { where: "Draft!B4", label: "hem", before: "56", after: "58" },
    { where: "Draft!B5", label: "sum", before: "112", after: "116" },
  ]);
});

test("formulas, names, notes, columns, pages and the unit are told where they differ", () => {
  let other = put(skirt, "Draft!B4", "=B3*3");
  other = edit.noteCell(other, 0, "B1", "taken tight");
  other = edit.changeColumn(other, 0, 1, { kind: "length" });
  other = {
    ...edit.addPage(other, { ...skirt.pages[0]!, title: "Cut", stage: "Cut", rows: [] }),
    title: "Two",
  };
  const { sum: _, ...names } = other.names;
  const told = between(skirt, { ...other, names }).changes.map(({ is, where, before, after }) => [
    is,
    where,
    before,
    after,
  ]);
  expect(told).toContainEqual(["cell", "Draft!B4", "=B3*2 (56)", "=B3*3 (84)"]);
  expect(told).toContainEqual(["note", "Draft!B1", "", "taken tight"]);
  expect(told).toContainEqual(["page", "Cut", "", "Cut"]);
  expect(told).toContainEqual(["name", "sum", "Draft!B5", ""]);
  expect(told).toContainEqual(["book", "the book", skirt.title, "Two"]);
  expect(told.filter(([is]) => is === "column")).toHaveLength(1);
});

test("rows put in and columns moved in a ready book change none of its answers", () => {
  const open = (name: string): Book => {
    const reading = readBook(
      readFileSync(new URL(`../../../templates/${name}.json`, import.meta.url), "utf8"),
    );
    if ("reason" in reading) throw new Error(reading.reason);
    return reading.book;
  };
  const inches = open("petticoat-and-cape");
  const moved = moveColumns(edit.insertRows(inches, 1, 3, 1), 0, 1, 1, 3);
  expect(between(inches, moved).answers).toEqual([]);
});

test("two books with much in common are calculated once, and the answers are those of each by itself", () => {
  const built = vi.spyOn(HyperFormula, "buildFromSheets");
  const lower = put(structuredClone(skirt), "Draft!B2", "2");
  expect(between(skirt, lower).answers.map(({ where, after }) => [where, after])).toEqual([
    ["Draft!B3", "29"],
    ["Draft!B4", "58"],
    ["Draft!B5", "116"],
  ]);
  expect(built).toHaveBeenCalledTimes(1);
  built.mockRestore();
});

test("a page copied for another wearer is one line with what is the same, and lines for what is not", () => {
  const own = { ...skirt, names: {}, pages: skirt.pages.map((page) => ({ ...page, names: skirt.names })) };
  const copied = copyPage(own, 0, "Widow");
  const plain = {
    is: "page",
    where: "Widow",
    label: "",
    before: "",
    after: "Draft; 10 cells and 5 names as on Draft",
  };
  expect(between(own, copied)).toEqual({ changes: [plain], answers: [] });
  expect(between(copied, own)).toEqual({
    changes: [{ ...plain, before: plain.after, after: "" }],
    answers: [],
  });
  const { changes } = between(own, put(copied, "Widow!B1", "30"));
  expect(changes.map(({ where, after }) => [where, after])).toEqual([
    ["Widow", "Draft; 6 cells and 5 names as on Draft"],
    ["Widow!B1", "30"],
    ["Widow!B3", "=waist+ease (31)"],
    ["Widow!B4", "=B3*2 (62)"],
    ["Widow!B5", "=SUM(B1:B4) (124)"],
  ]);
});
