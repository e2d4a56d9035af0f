import fc from "fast-check";
import { expect, test } from "vitest";
import { LACINGS, laceRuns } from "../../../functions/drafting/lacing.ts";
import { distance } from "../../../functions/geometry/strokes.ts";
import { LACE_LENGTH } from "../../../functions/notions/LACE_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const lace = (...args: (number | string)[]) => run(LACE_LENGTH, args, { unit: "cm" }) as number;

test("six pairs 2.5 apart across 4 take a criss-cross lace of 51.1699056603", () => {
  // LA-01: geometry, worked in 50 to 60 digits.
  expect(lace(4, 6, 2.5, "cross", 0)).toBeCloseTo(51.1699056603, 9);
});

test("whatever the style, the lace is as long as the way it is drawn, with its tails or loops", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...LACINGS),
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.integer({ min: 2, max: 30 }),
      fc.double({ min: 0.5, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      (style, gap, pairs, spacing, tails) => {
        const way = laceRuns(style, gap, pairs, spacing).reduce(
          (sum, points) =>
            sum + points.slice(1).reduce((part, point, i) => part + distance(points[i]!, point), 0),
          0,
        );
        expect(lace(gap, pairs, spacing, style, tails)).toBeCloseTo(
          way + (style === "loops" ? 4 : 2) * tails,
          8,
        );
      },
    ),
    { seed: 4 },
  );
});

test("unfolded over its edges a crossing lace is one straight line", () => {
  // Reflect the strip at each edge: n − 1 crossings become a line across n − 1 strips.
  const straight = Math.hypot(9 * 5, 9 * 2);
  expect(lace(5, 10, 2, "cross", 0)).toBeCloseTo(5 + 2 * straight, 9);
  expect(lace(5, 10, 2, "spiral", 0)).toBeCloseTo(Math.hypot(19 * 5, 19), 9);
});
