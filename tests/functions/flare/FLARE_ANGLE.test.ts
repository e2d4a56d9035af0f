import { expect, test } from "vitest";
import { FLARE_ANGLE } from "../../../functions/flare/FLARE_ANGLE.ts";
import { calls } from "../calls.ts";

const { figure, step } = calls(FLARE_ANGLE, "cm");

test("the printed flounce of 72 and 112 at a depth of 12 opens to 190.98593 degrees", () => {
  // CI-03, computed from Baldt, Clothing for Women, 1916: 72/21.6 radians.
  expect(Math.abs(figure(72, 112, 12) - 190.98593171)).toBeLessThan(1e-7);
});

test("waist 72, hem 200, length 60 opens to 122.2309962946 degrees", () => {
  // CI-11, computed in 50 digits.
  expect(Math.abs(figure(72, 200, 60) - 122.2309962946)).toBeLessThan(1e-9);
});

test("a hem longer by a full turn of its depth is one circle, whatever the top", () => {
  for (const top of [10, 72, 400]) {
    expect(figure(top, top + 2 * Math.PI * 25, 25)).toBeCloseTo(360, 9);
    expect(step("circles", top, top + Math.PI * 25, 25)).toBeCloseTo(0.5, 12);
  }
});
