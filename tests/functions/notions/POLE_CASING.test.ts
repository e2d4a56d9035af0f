import { expect, test } from "vitest";
import { CASING_DEPTH } from "../../../functions/notions/CASING_DEPTH.ts";
import { POLE_CASING } from "../../../functions/notions/POLE_CASING.ts";
import { calls } from "../calls.ts";

const { figure, step } = calls(POLE_CASING, "cm");

test("both layers of the casing together go just round the pole, and the ease", () => {
  for (const diameter of [1, 2.8, 5]) {
    expect(2 * step("tunnel", diameter, 0)).toBeCloseTo(Math.PI * diameter, 12);
    expect(2 * step("tunnel", diameter, 1)).toBeCloseTo(Math.PI * diameter + 2, 12);
  }
});

test("it is the flat casing of a tape half as wide as the pole is round", () => {
  const flat = calls(CASING_DEPTH, "cm").figure((Math.PI * 3) / 2, 1, 0.6);
  expect(figure(3, 1, 0.6)).toBeCloseTo(flat, 12);
});

test("a heading stands above the pole in both layers", () => {
  expect(figure(3, 1, 1, 2) - figure(3, 1, 1)).toBeCloseTo(2, 12);
  expect(step("above_stitching", 3, 1, 1, 2) - step("above_stitching", 3, 1, 1)).toBeCloseTo(4, 12);
});
