import { expect, test } from "vitest";
import { FULL_SIZE } from "../../../functions/body/FULL_SIZE.ts";
import { run } from "../../../functions/run.ts";

test("the known distance itself comes out as it is known, a plate drawn in half size doubles", () => {
  expect(run(FULL_SIZE, [4.65, 4.65, 42], { unit: "cm" })).toBeCloseTo(42, 12);
  expect(run(FULL_SIZE, [3.3125, 6, 12], { unit: "in" })).toBe(6.625);
});

test("similar triangles keep their shape: a right triangle of the plate is a right triangle in truth", () => {
  const side = (drawn: number) => run(FULL_SIZE, [drawn, 1.3, 9.1], { unit: "cm" }) as number;
  expect(Math.hypot(side(3), side(4))).toBeCloseTo(side(5), 12);
});

test("a drawing of no size is refused", () => {
  expect(run(FULL_SIZE, [3, 0, 12], { unit: "cm" })).toMatchObject({
    refusal: "drawing must be at least 0.1 cm, not 0",
  });
});
