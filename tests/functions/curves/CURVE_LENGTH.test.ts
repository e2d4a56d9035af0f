import { expect, test } from "vitest";
import { CURVE_LENGTH } from "../../../functions/curves/CURVE_LENGTH.ts";
import { LINE_LENGTH } from "../../../functions/curves/LINE_LENGTH.ts";
import { smoothThrough } from "../../../functions/geometry/smooth-curve.ts";
import { edgeLength } from "../../../functions/pieces/piece.ts";
import { run } from "../../../functions/run.ts";

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
  expect(five).toBeLessThan(2e-4);
  expect(ten!).toBeLessThan(1e-5);
  expect(forty).toBeLessThan(1e-7);
});

/** Round an ellipse, 4·a·E(m), by Gauss's arithmetic-geometric mean; checked below against the figures of DLMF 19.30. */
function ellipse(a: number, b: number): number {
  let [x, y, sum] = [a, b, (a * a - b * b) / 2];
  for (let n = 0; n < 10; n += 1) {
    const half = (x - y) / 2;
    [x, y] = [(x + y) / 2, Math.sqrt(x * y)];
    sum += 2 ** n * half * half;
  }
  return (2 * Math.PI * (a * a - sum)) / x;
}

test("two hundred points round an ellipse give its true length within a part in a thousand million", () => {
  for (const [a, b, round] of [
    [2, 1, 9.688448220548],
    [5, 3, 25.526998863398],
    [15, 10, 79.327197946453],
  ] as const) {
    expect(ellipse(a, b)).toBeCloseTo(round, 10);
    const at = (turns: readonly number[]) => [
      turns.map((t) => a * Math.cos(t)),
      turns.map((t) => b * Math.sin(t)),
    ];
    const length = (turns: readonly number[]) => run(CURVE_LENGTH, at(turns), { unit: "cm" }) as number;
    // Closed: the last point is the first; open: it only lies there, to all but the last figure; a quarter, open.
    const ring = Array.from({ length: 201 }, (_, i) => (Math.PI * (i % 200)) / 100);
    expect(Math.abs(length(ring) / round - 1)).toBeLessThan(1e-10);
    const open = Array.from({ length: 201 }, (_, i) => 0.3 + (Math.PI * i) / 100);
    expect(Math.abs(length(open) / round - 1)).toBeLessThan(1e-9);
    const quarter = Array.from({ length: 50 }, (_, i) => (Math.PI / 98) * i);
    expect(Math.abs((4 * length(quarter)) / round - 1)).toBeLessThan(2e-8);
  }
});

test("through few points the curve drawn is the plain spline, and what is drawn is what is measured", () => {
  const [xs, ys] = [[0, 1.3, 5, 10], [10, 5, 1.3, 0]]; // biome-ignore format: two columns
  const points = xs.map((x, i): [number, number] => [x, ys[i]!]);
  expect(run(CURVE_LENGTH, [xs, ys], { unit: "cm" })).toBe(edgeLength(smoothThrough(points)));
});

test("an armhole of points a tenth of its radius apart misses less than a thousandth", () => {
  const turns = Array.from({ length: 17 }, (_, i) => i / 10);
  const [xs, ys] = [turns.map((t) => 12 * Math.cos(t)), turns.map((t) => 12 * Math.sin(t))];
  const length = run(CURVE_LENGTH, [xs, ys], { unit: "cm" }) as number;
  expect(Math.abs(length / (12 * 1.6) - 1)).toBeLessThan(1e-3);
  expect(length).toBeGreaterThan(run(LINE_LENGTH, [xs, ys], { unit: "cm" }) as number);
});

test("blank cells and columns of unequal length are refused", () => {
  expect(run(CURVE_LENGTH, [[0, null, 3], [0, 1, 2]], { unit: "cm" })).toMatchObject({
    refusal: "xs, number 2, is empty: a length is needed there",
    at: { position: 0, cell: 1 },
  }); // biome-ignore format: two columns
  expect(run(CURVE_LENGTH, [[0, 1, 3], [0, 1]], { unit: "cm" })).toMatchObject({
    refusal: "xs and ys must have the same number of values, not 3 and 2",
  }); // biome-ignore format: two columns
});
