import { expect, test } from "vitest";
import { CIRCLE_RADIUS } from "../../../functions/flare/CIRCLE_RADIUS.ts";
import { FLOUNCE_COUNT } from "../../../functions/flare/FLOUNCE_COUNT.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(FLOUNCE_COUNT, "cm");

test("as many rings as cover the edge, and one fewer would not", () => {
  for (const [edge, radius, circle, seam] of [[150, 8, 1, 1], [300, 5, 0.5, 0.5], [62, 10, 1, 0]] as const) {
    const rings = figure(edge, radius, circle, seam);
    const each = 2 * Math.PI * circle * radius - 2 * seam;
    expect(rings * each).toBeGreaterThanOrEqual(edge);
    expect((rings - 1) * each).toBeLessThan(edge);
  }
}); // biome-ignore format: one row a flounce

test("at the fitted radius so many rings just fit", () => {
  const fitted = step("fitted_radius", 150, 8);
  expect(fitted).toBeCloseTo(calls(CIRCLE_RADIUS, "cm").figure(150 / figure(150, 8)), 12);
  expect(step("left_over", 150, fitted)).toBeCloseTo(0, 9);
});

test("a seam that eats up the ring is refused", () => {
  expect(refusal(100, 1, 0.2, 1)).toMatch(
    /^seam must be less than half of a ring's inner edge of 1.3 cm, not 1 cm at/,
  );
});
