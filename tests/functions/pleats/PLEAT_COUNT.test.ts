import fc from "fast-check";
import { expect, test } from "vitest";
import { FLAT_WIDTH } from "../../../functions/pleats/FLAT_WIDTH.ts";
import { PLEAT_COUNT } from "../../../functions/pleats/PLEAT_COUNT.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(PLEAT_COUNT, "cm");

test("236 cm taken down to 92 in pleats 4 cm deep are the eighteen of the handbook", () => {
  // PL-03 backwards, printed: NIMI, Dress Making Trade Practical, p. 203 ex. 1b.
  expect(figure(236, 92, 4)).toBe(18);
  expect(figure(150, 50, 2.5)).toBe(20);
});

test("with its corrected depth the pleats come out at just the flat width", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 300, noNaN: true }),
      fc.double({ min: 1.5, max: 4, noNaN: true }),
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      fc.constantFrom("knife", "box", "inverted"),
      fc.constantFrom("nearest", "down", "up"),
      (finished, times, depth, style, rounding) => {
        const args = [finished * times, finished, depth, style, rounding] as const;
        const count = figure(...args);
        fc.pre(count > 0);
        const true_depth = step("corrected_depth", ...args);
        expect(calls(FLAT_WIDTH, "cm").figure(finished, count, true_depth, style)).toBeCloseTo(
          finished * times,
          8,
        );
        if (rounding === "down") expect(true_depth).toBeGreaterThan(depth * (1 - 1e-7));
        if (rounding === "up") expect(true_depth).toBeLessThan(depth * (1 + 1e-7));
      },
    ),
    { seed: 57 },
  );
});

test("half as many box pleats as knife pleats take in the same fullness", () => {
  expect(figure(160, 80, 2)).toBe(20);
  expect(figure(160, 80, 2, "box")).toBe(10);
  expect(figure(160, 80, 2, "inverted")).toBe(10);
});

test("nothing to take in needs no pleats", () => {
  expect(figure(80, 80, 2)).toBe(0);
});

test("cloth narrower than it is to finish is refused", () => {
  expect(refusal(60, 80, 2)).toBe("flat must be at least as wide as finished, not 60 cm against 80 cm");
  expect(refusal(80, 60, 0)).toBe("depth must be at least 0.1 cm, not 0");
});
