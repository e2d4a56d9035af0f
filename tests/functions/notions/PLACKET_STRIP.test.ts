import { expect, test } from "vitest";
import { BIAS_CUT_WIDTH } from "../../../functions/cloth/BIAS_CUT_WIDTH.ts";
import { PLACKET_STRIP } from "../../../functions/notions/PLACKET_STRIP.ts";
import { run } from "../../../functions/run.ts";

test("a ten-inch opening takes a strip of 21 by 2 1/2 in that finishes an inch wide", () => {
  // Kinne & Cooley, Clothing and Health, 1916, bloomers (rule printed, length worked; width printed).
  expect(run(PLACKET_STRIP, [10], { unit: "in" })).toBeCloseTo(21, 12);
  expect(run(BIAS_CUT_WIDTH, [1, "single", 0.25], { unit: "in" })).toBe(2.5);
});
