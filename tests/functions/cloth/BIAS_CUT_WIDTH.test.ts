import { expect, test } from "vitest";
import { BIAS_CUT_WIDTH } from "../../../functions/cloth/BIAS_CUT_WIDTH.ts";
import { run } from "../../../functions/run.ts";

const width = (...args: (number | string | null)[]) => run(BIAS_CUT_WIDTH, args, { unit: "in" });

test("a strip two and a half inches wide finishes an inch", () => {
  // Kinne & Cooley, Clothing and Health, 1916, bloomers and lesson 11 (printed).
  expect(width(1, "single", 0.25)).toBe(2.5);
});

test("folded up again, the strip lies on both sides of the edge with its turnings inside", () => {
  // Two faces and two turnings of one layer, or the same of two layers but for the turnings' single ones.
  for (const finished of [0.25, 0.5, 1.25]) {
    for (const turning of [0.25, 0.375]) {
      expect((width(finished, "single", turning) as number) - 2 * turning).toBeCloseTo(2 * finished, 12);
      expect(((width(finished, "double", turning) as number) / 2 - turning) / 2).toBeCloseTo(finished, 12);
    }
  }
});

test("common practice: single binding is cut four times its width, doubled six times", () => {
  expect(width(0.375)).toBe(1.5);
  expect(width(0.375, "double")).toBe(2.25);
});
