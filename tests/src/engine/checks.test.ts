import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { findPlace } from "../../../src/book/address.ts";
import { readBook } from "../../../src/book/read.ts";
import type { Book } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { bookOf } from "./whatif-books.ts";

const found = (book: Book) => {
  const engine = new Engine(book, layDesk);
  const list = checks(engine).map(({ name, is, sentence, waiting }) => [name, is, sentence, waiting]);
  engine.destroy();
  return list;
};

test("a blank measurement that is added to is told, not silently counted as 0", () => {
  const cells = { waist: "", hip: "40 in", ease: "=hip-waist", half: "=waist/2", band: "=waist+2" };
  expect(found(bookOf(cells))).toEqual([
    ["waist", "blank", "this is empty, and ease (Draft!B3) counts it as 0: type a number", 2],
  ]);
  expect(found(bookOf({ ...cells, waist: "27" }))).toEqual([]);
});

test("a blank that a function refuses is told once, with how many wait for it", () => {
  const cells = { waist: "", cut: "=WITH_EASE(waist;2)", half: "=cut/2", quarter: "=half/2" };
  expect(found(bookOf(cells))).toEqual([["cut", "error", "body is empty: a length is needed there", 2]]);
});

test("what one cell holds is one problem, however many formulas refuse it, and the problem names the cell", () => {
  const cells = {
    seam: "1/2",
    waist: "27",
    eased: "=WITH_EASE(waist;seam)",
    strip: "=WITH_ALLOWANCE(RECTANGLE(2;waist);seam)",
    stay: "=WITH_ALLOWANCE(RECTANGLE(B2;3);B1)",
    half: "=waist/2+seam",
    third: "=seam/3",
  };
  const listed = (typed: string) => {
    const engine = new Engine(bookOf({ ...cells, seam: typed }), layDesk);
    const list = checks(engine).map(({ address, sentence, at, waiting }) => [
      address,
      sentence,
      at.map((one) => engine.address(one)),
      waiting,
    ]);
    const said = engine.saidOf(findPlace(engine.book, "Draft!B1")!).map(({ sentence }) => sentence);
    engine.destroy();
    return { list, said };
  };
  expect(listed("1/2")).toEqual({ list: [], said: [] });
  expect(listed("-3")).toEqual({
    list: [["Draft!B4", "seam must be at least 0, not -3 in", ["Draft!B1"], 1]],
    said: ["seam must be at least 0, not -3 in"],
  });
  expect(listed("abc").list).toEqual([["Draft!B3", 'amount must be a length, not "abc"', ["Draft!B1"], 4]]);
});

test("a blank that a formula asks after, or that stands in a list, may be blank", () => {
  const cells = {
    extra: "",
    hip: "40 in",
    with_extra: '=IF(extra="";hip;WITH_EASE(hip;extra))',
    all: "=SUM(B1:B2)",
  };
  expect(found(bookOf(cells))).toEqual([]);
});

test("verdicts that are not ok are listed beside errors, in the order of the book", () => {
  const cells = { deep: "9", ill: "=1/0", verdict: '=IF(deep>8;"check: deeper than the paper";"ok")' };
  const older = { ...cells, verdict: cells.verdict.replace("check", "look") };
  for (const one of [cells, older])
    expect(found(bookOf(one)).map(([name, is]) => [name, is])).toEqual([
      ["ill", "error"],
      ["verdict", "verdict"],
    ]);
});

// The book of the whole cast has problems on purpose; whole-cast.test.ts holds to exactly those.
test.each(readdirSync("templates").filter((name) => name.endsWith(".json") && name !== "whole-cast.json"))(
  "the ready book %s has no problems",
  (file) => {
    const reading = readBook(readFileSync(`templates/${file}`, "utf8"));
    expect("book" in reading && found(reading.book)).toEqual([]);
  },
);

test("what is unusual is answered in its cell and listed among the problems, and goes when it is put right", () => {
  const cells = {
    edge: "1",
    apart: "7",
    hooks: "=HOOK_COUNT(edge;apart)",
    pairs: "=hooks*2",
    blank: "",
    more: "=pairs+blank",
  };
  const book = bookOf(cells);
  const sentence = "HOOK_COUNT: the spacing 7 in is above the edge 1 in; are they swapped?";
  expect(found(book)).toContainEqual(["hooks", "unusual", sentence, 0]);
  const engine = new Engine(book, layDesk);
  const place = findPlace(book, book.names.hooks!)!;
  expect(engine.view(place)).toMatchObject({ value: 2, shown: "2", problem: { is: "unusual", sentence } });
  engine.become(bookOf({ ...cells, edge: "14" }));
  expect(engine.view(place)).toMatchObject({ value: 3, problem: null });
  engine.become(book);
  expect(engine.view(place).problem?.is).toBe("unusual");
  engine.become(bookOf({ ...cells, hooks: "=IF(edge>2;HOOK_COUNT(edge;apart);0)" }));
  expect(engine.view(place)).toMatchObject({ value: 0, problem: null });
  engine.destroy();
});

test("a count of stock lengths that is not proved least is answered in its cell and listed among the problems", () => {
  const lengths = Array.from({ length: 45 }, (_, i) => String(Math.round(1530 + ((i * 737) % 3170)) / 100));
  const cells = {
    ...Object.fromEntries(lengths.map((length, i) => [`bone_${i + 1}`, length])),
    steels: `=STOCK_COUNT(B1:B45;{${lengths.map(() => 1).join("|")}};100)`,
  };
  expect(found(bookOf(cells))).toEqual([
    [
      "steels",
      "unusual",
      expect.stringMatching(/^STOCK_COUNT: \d+ is the best found, not proved least: .* \d+ might be enough$/),
      0,
    ],
  ]);
});
