import { expect, test } from "vitest";
import { CURVE_LENGTH } from "../../../functions/curves/CURVE_LENGTH.ts";
import { LINE_LENGTH } from "../../../functions/curves/LINE_LENGTH.ts";
import { run } from "../../../functions/work.ts";

const through = (f: (x: number) => number, count: number) => {
  const xs = Array.from({ length: count + 1 }, (_, i) => i / count);
  return run(CURVE_LENGTH, [xs, xs.map(f)], { unit: "cm" }) as number;
};

test.each([
  // CU-01 and CU-02, computed in 50 digits.
  ["y = x²", (x: number) => x * x, 1.4789428575446],
  ["y = cosh x", Math.cosh, 1.1752011936438],
] as const)("through points of %s from 0 to 1 it nears the true length", (_, f, length) => {
  const [five, ten, forty] = [through(f, 5), through(f, 10), through(f, 40)].map((l) => Math.abs(l - length));
  expect(five).toBeLessThan(1e-3);
  expect(ten!).toBeLessThan(five! / 4);
  expect(forty).toBeLessThan(1e-5);
});

test("an armhole of points a tenth of its radius apart misses less than a thousandth", () => {
  const turns = Array.from({ length: 17 }, (_, i) => i / 10);
  const [xs, ys] = [turns.map((t) => 12 * Math.cos(t)), turns.map((t) => 12 * Math.sin(t))];
  const length = run(CURVE_LENGTH, [xs, ys], { unit: "cm" }) as number;
  expect(Math.abs(length / (12 * 1.6) - 1)).toBeLessThan(1e-3);
  expect(length).toBeGreaterThan(run(LINE_LENGTH, [xs, ys], { unit: "cm" }) as number);
});

test("blank cells and columns of unequal length are refused", () => {
  expect(run(CURVE_LENGTH, [[0, null, 3], [0, 1, 2]], { unit: "cm" })).toEqual({
    refusal: "xs, number 2, is empty: a length is needed there",
  }); // biome-ignore format: two columns
  expect(run(CURVE_LENGTH, [[0, 1, 3], [0, 1]], { unit: "cm" })).toEqual({
    refusal: "xs and ys must have as many figures as each other, not 3 and 2",
  }); // biome-ignore format: two columns
});
