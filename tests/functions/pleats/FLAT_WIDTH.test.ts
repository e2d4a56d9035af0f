import fc from "fast-check";
import { expect, test } from "vitest";
import { FLAT_WIDTH } from "../../../functions/pleats/FLAT_WIDTH.ts";
import { PLEAT_ALLOWANCE } from "../../../functions/pleats/PLEAT_ALLOWANCE.ts";
import { PLEAT_DEPTH } from "../../../functions/pleats/PLEAT_DEPTH.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(FLAT_WIDTH, "cm");

test("eighteen pleats 4 cm deep in a section of 92 cm need 236 cm", () => {
  // PL-03, printed: NIMI (Govt of India DGT), Dress Making Trade Practical, p. 203 ex. 1b.
  expect(figure(92, 18, 4)).toBe(236);
});

test("pleats as deep as they are wide take three times the section, and the seam", () => {
  // PL-06, printed: NIMI p. 204 b. PL-16 and PL-18: NIMI p. 205 ex. 8 and 5, rule printed, answers worked.
  expect(figure(50, 20, 2.5, "knife", 2)).toBe(152);
  expect(figure(95, 19, 5)).toBe(285);
  expect(figure(15.5, 5, 3.1)).toBeCloseTo(46.5, 12);
});

test("box pleats as wide as the spaces between, their folds as deep, take three feet to the foot", () => {
  // PL-09, printed: Stephenson, Cutting and Draping, 1905, Pleated Valances, about 3 ft per ft.
  for (const count of [1, 2, 6]) {
    const wide = 12 / count / 2;
    expect(step("times", 12, count, wide, "box")).toBeCloseTo(3, 12);
    // Folds that only meet behind their pleat are half as deep, and take two (geometry).
    expect(step("times", 12, count, wide / 2, "box")).toBeCloseTo(2, 12);
  }
});

test("the flat width is the finished one, what the pleats take, and the seam; the depth can be worked back", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 400, noNaN: true }),
      fc.integer({ min: 1, max: 80 }),
      fc.double({ min: 0.1, max: 20, noNaN: true }),
      fc.constantFrom("knife", "box", "inverted"),
      (finished, count, depth, style) => {
        const flat = figure(finished, count, depth, style);
        const taken = calls(PLEAT_ALLOWANCE, "cm").figure(count, depth, style);
        expect(flat).toBeCloseTo(finished + taken, 8);
        expect(calls(PLEAT_DEPTH, "cm").figure(flat, finished, count, style)).toBeCloseTo(depth, 8);
      },
    ),
    { seed: 53 },
  );
});

test("half a pleat, a depth below nothing and an unknown style are refused", () => {
  expect(refusal(92, 2.5, 4)).toBe("count must be a whole number, not 2.5");
  expect(refusal(92, 18, -4)).toBe("depth must be at least 0, not -4 cm");
  expect(refusal(92, 18, 4, "accordion")).toBe('style must be "knife", "box" or "inverted", not "accordion"');
});
