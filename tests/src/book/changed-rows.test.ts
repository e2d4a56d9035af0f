import { expect, test } from "vitest";
import { changedRows } from "../../../src/book/changed-rows.ts";

test("a row that is another object has changed, and so has a row that only one of two states has", () => {
  const [a, b, c] = [["a"], ["b"], ["c"]];
  expect(changedRows([a, b, c], [a, ["b"], c])).toEqual([1]);
  expect(changedRows([a, b], [a, b, c])).toEqual([2]);
  expect(changedRows([a, b, c], [b])).toEqual([0, 1, 2]);
  expect(changedRows([a, b], [a, b])).toEqual([]);
});

test("what was compared last is no answer for other states", () => {
  const rows = [["a"], ["b"]];
  const next = rows.with(1, ["c"]);
  expect(changedRows(rows, next)).toEqual([1]);
  expect(changedRows(rows, next)).toEqual([1]);
  expect(changedRows(rows, rows.with(0, ["c"]))).toEqual([0]);
  expect(changedRows(next.with(0, ["d"]), next)).toEqual([0]);
});
