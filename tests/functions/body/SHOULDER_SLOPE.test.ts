import { expect, test } from "vitest";
import { SHOULDER_SLOPE } from "../../../functions/body/SHOULDER_SLOPE.ts";
import { run } from "../../../functions/run.ts";

const slope = (...args: number[]) => run(SHOULDER_SLOPE, args, { unit: "cm" });

test("the shoulder line is the slanting side of a right triangle", () => {
  // Known triangles: half an equilateral one, half a square.
  expect(slope(10, 5 * Math.sqrt(3))).toBeCloseTo(60, 10);
  expect(slope(10, 5 * Math.SQRT2)).toBeCloseTo(45, 10);
  expect(slope(12, 0)).toBe(0);
});

test("a drop as long as the shoulder is refused", () => {
  expect(slope(12, 12)).toMatchObject({
    refusal: "drop must be less than shoulder, not 12 cm against 12 cm",
  });
});
