import fc from "fast-check";
import { expect, test } from "vitest";
import { EYELET_COUNT } from "../../../functions/notions/EYELET_COUNT.ts";
import { isRefused, run } from "../../../functions/run.ts";

const count = (...args: number[]) => run(EYELET_COUNT, args, { unit: "cm" }) as number;

test("one eyelet fewer would stand too far apart", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 100, noNaN: true }),
      fc.double({ min: 0.6, max: 8, noNaN: true }),
      fc.double({ min: 0, max: 4, noNaN: true }),
      (edge, spacing, inset) => {
        const n = count(edge, spacing, inset);
        const row = edge - 2 * inset;
        expect(row / (n - 1)).toBeLessThanOrEqual(spacing * (1 + 1e-6));
        if (n > 2) expect(row / (n - 2)).toBeGreaterThan(spacing);
      },
    ),
    { seed: 2 },
  );
});

test("the count of tucks that is said to serve for buttons too serves for eyelets", () => {
  // NIMI, Dress Making Trade Practical, p. 209: 39 cm, 1.2 cm apart, 1.5 cm at each edge: 31 (printed).
  expect(count(39, 1.2, 1.5)).toBe(31);
});

test("an edge shorter than what is kept clear at both ends is refused", () => {
  const answer = run(EYELET_COUNT, [5, 1, 3], { unit: "cm" });
  expect(isRefused(answer) && answer.refusal).toBe(
    "edge must be at least 6 cm for the spaces kept clear at its ends, not 5 cm",
  );
});
