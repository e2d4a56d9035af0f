import fc from "fast-check";
import { expect, test } from "vitest";
import { PLEATS_ACROSS } from "../../../functions/pleats/PLEATS_ACROSS.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(PLEATS_ACROSS, "cm");

test("eighteen pleats of about 5 cm go across a section of 92 cm, each 5.11 cm wide", () => {
  // PL-01 and PL-02, printed: NIMI, Dress Making Trade Practical, p. 203 ex. 1a.
  expect(figure(92, 5)).toBe(18);
  expect(Math.abs(step("corrected_width", 92, 5) - 5.11)).toBeLessThan(0.005);
});

test("twenty pleats of 2.5 cm go across 50 cm", () => {
  // PL-05, printed: NIMI p. 204 a.
  expect(figure(50, 2.5)).toBe(20);
  expect(figure(50, 2.5, "up")).toBe(20);
  expect(figure(50, 2.5, "down")).toBe(20);
});

test("five pleats across 15.5 cm are 3.1 cm each", () => {
  // PL-18, rule printed, answer worked: NIMI p. 205 ex. 5.
  expect(figure(15.5, 3.1)).toBe(5);
  expect(step("corrected_width", 15.5, 3)).toBeCloseTo(3.1, 12);
});

test("corrected pleats side by side fill the section; rounding down widens them, up narrows them", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 500, noNaN: true }),
      fc.double({ min: 0.5, max: 9, noNaN: true }),
      (finished, width) => {
        for (const rounding of ["nearest", "down", "up"]) {
          const wide = step("corrected_width", finished, width, rounding);
          expect(wide * figure(finished, width, rounding)).toBeCloseTo(finished, 9);
          if (rounding === "down") expect(wide).toBeGreaterThan(width * (1 - 1e-7));
          if (rounding === "up") expect(wide).toBeLessThan(width * (1 + 1e-7));
        }
      },
    ),
    { seed: 56 },
  );
});

test("pleats wider than the section are refused", () => {
  expect(refusal(4, 5)).toBe("width must be at most the finished 4 cm, not 5 cm");
  expect(refusal(92, 5, "even")).toBe('rounding must be "nearest", "down" or "up", not "even"');
});
