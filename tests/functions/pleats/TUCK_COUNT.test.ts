import fc from "fast-check";
import { expect, test } from "vitest";
import { TUCK_COUNT } from "../../../functions/pleats/TUCK_COUNT.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(TUCK_COUNT, "cm");

test("thirty-one tucks go on 39 cm with gaps of 1.2 cm and edges of 1.5 cm", () => {
  // TU-01, printed: NIMI, Dress Making Trade Practical, p. 209 ex. 1.
  expect(figure(39, 1.2, 1.5)).toBe(31);
});

test("twenty-one tucks go on 44 cm with gaps and edges of 2 cm", () => {
  // TU-03, rule printed, answer worked: NIMI p. 209 exercise 1a.
  for (const rounding of ["nearest", "down", "up"]) expect(figure(44, 2, 2, rounding)).toBe(21);
});

test("both edges and all corrected gaps side by side are the finished width", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 200, noNaN: true }),
      fc.double({ min: 0.3, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
      fc.constantFrom("nearest", "down", "up"),
      (finished, gap, edge, rounding) => {
        const count = figure(finished, gap, edge, rounding);
        const true_gap = step("corrected_gap", finished, gap, edge, rounding);
        expect(count).toBeGreaterThan(1);
        expect(2 * edge + (count - 1) * true_gap).toBeCloseTo(finished, 9);
        if (rounding === "down") expect(true_gap).toBeGreaterThan(gap * (1 - 1e-7));
        if (rounding === "up") expect(true_gap).toBeLessThan(gap * (1 + 1e-7));
      },
    ),
    { seed: 61 },
  );
});

test("where no gap fits there is one tuck alone", () => {
  expect(figure(10, 4, 5)).toBe(1);
  expect(figure(10, 4, 4, "down")).toBe(1);
});

test("edges wider than half the width are refused", () => {
  expect(refusal(39, 1.2, 20)).toBe("edge must be at most half the finished 39 cm, not 20 cm");
  expect(refusal(39, 0)).toBe("gap must be at least 0.1 cm, not 0");
});
