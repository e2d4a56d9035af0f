import { expect, test } from "vitest";
import { BAND_WIDTH } from "../../../functions/curves/BAND_WIDTH.ts";
import { run } from "../../../functions/run.ts";

test.each([
  // HE-03, printed: Johnson, It's Fun to Sew Aprons and Skirts, L-86, 1964: 3 parts of 2 in and a 1/2 in fold.
  [[2, 3, 0.5], 6.5],
  // HE-06, printed: Kinne & Cooley, Clothing and Health, 1916: a strip of 2 1/2 in finishes 1 in with 1/4 in turnings.
  [[1, 2, 0.5], 2.5],
])("%j in is cut %d in wide", (args, width) => {
  expect(run(BAND_WIDTH, args, { unit: "in" })).toBe(width);
});

test("half an inch is turned in when nothing is told, 1.2 cm by a metric tape", () => {
  expect(run(BAND_WIDTH, [2], { unit: "in" })).toBe(4.5);
  expect(run(BAND_WIDTH, [5], { unit: "cm" })).toBe(11.2);
});
