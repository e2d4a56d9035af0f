import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { LIST_SUM } from "../../../functions/cloth/LIST_SUM.ts";
import type { Cell } from "../../../functions/define.ts";
import { type Argument, run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";
import { calls } from "../calls.ts";

const { answer, refusal } = calls(LIST_SUM, "in");
const HEADS = ["Garment", "Cloth", "Length", "Hours"];
const ROWS: readonly (readonly Cell[])[] = [
  ["peplum", "wool, lies across", 40, 6],
  ["cape", "Wool", 90, "-"],
  ["shift", "linen", 110.5, 4],
  ["apron", "linen", null, 2],
];
const list = (rows = ROWS) => asBlock([HEADS, ...rows].flat(), 4, []);

test("the sums of all entries are the sum of the column: nothing is lost and nothing counted twice", () => {
  const full = list([...ROWS.slice(0, 3), ["apron", "linen", 27, 2]]);
  const sums = ["wool", "LINEN"].map((cloth) => answer(full, "length", "cloth", cloth) as number);
  expect(sums).toEqual([40 + 90, 110.5 + 27]);
  expect(sums[0]! + sums[1]!).toBe(40 + 90 + 110.5 + 27);
  expect(answer(full, "hours", "cloth", "wool")).toBe(6);
  expect(answer(full, "hours", "cloth", "linen", "garment", "apron")).toBe(2);
  expect(answer(full, "hours", "cloth", null)).toBe("");
  expect(answer(asBlock(["width", "length", 54, 10, 36, 5, 54, 7], 2, []), "length", "width", 54)).toBe(17);
});

test("a misspelt item is never 0, and a gap in a row that counts leads to its cell", () => {
  expect(refusal(list(), "length", "cloth", "linnen")).toBe(
    'no row of the list has "linnen" under cloth; is "linen" meant?',
  );
  expect(refusal(list(), "lenght", "cloth", "wool")).toBe(
    'the list has no column "lenght"; is "length" meant?',
  );
  expect(run(LIST_SUM, [list(), "length", "cloth", "linen"], { unit: "in" })).toMatchObject({
    refusal: "a row of linen is empty under length: write a number, or - where there is no number",
    at: { position: 0, cell: 4 * 4 + 2 },
  });
  const text = list([["cape", "wool", "2 yd?", 1]]);
  expect(refusal(text, "length", "cloth", "wool")).toBe(
    'a row of wool has "2 yd?" under length, where a number is needed',
  );
});

test("a cloth that the list does not have is 0 with a caution, and no caution where only both items together are lacking", () => {
  expect(answer(list(), "hours", "cloth", "silk")).toBe(0);
  expect(toLookAt(LIST_SUM, [list(), "hours", "cloth", "silk"], { unit: "in" })).toEqual([
    'LIST_SUM: no row of the list has "silk" under cloth, only "wool", "linen"; so nothing is added up',
  ]);
  const both: readonly Argument[] = [list(), "hours", "cloth", "wool", "garment", "shift"];
  expect(answer(...both)).toBe(0);
  expect(toLookAt(LIST_SUM, both, { unit: "in" })).toEqual([]);
  expect(toLookAt(LIST_SUM, both.with(5, "gown"), { unit: "in" })).toHaveLength(1);
  expect(refusal(list(), "hours", "cloth", "wool", "garment", "shirt")).toMatch(/is "shift" meant\?$/);
});

test("a figure without an item is said to be left out", () => {
  const rows = list([...ROWS.slice(0, 3), ["in all", "", 240.5, 12]]);
  expect(answer(rows, "length", "cloth", "wool")).toBe(130);
  expect(toLookAt(LIST_SUM, [rows, "length", "cloth", "wool"], { unit: "in" })).toEqual([
    "LIST_SUM: one row has a figure under length and nothing under cloth, and is not counted",
  ]);
});

test("a lone figure below zero counts and is doubted with its cell; among changes either way it is not", () => {
  const hours = (...figures: number[]) =>
    asBlock(["Wearer", "Hours", ...figures.flatMap((figure) => ["cook", figure])], 2, []);
  const pointed: unknown[] = [];
  const points = (at: unknown) => pointed.push(at);
  const slip = [hours(4, 5, -3, 2), "hours", "wearer", "cook"];
  expect(run(LIST_SUM, slip, { unit: "in", points })).toBe(8);
  expect(pointed).toEqual([{ position: 0, cell: 3 * 2 + 1 }]);
  expect(toLookAt(LIST_SUM, slip, { unit: "in" })).toEqual([
    "LIST_SUM: -3 under hours is below zero, and hardly another number there is: type 0 or more",
  ]);
  expect(toLookAt(LIST_SUM, [hours(4, -5, -3, 2), ...slip.slice(1)], { unit: "in" })).toEqual([]);
});
