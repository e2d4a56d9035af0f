import fc from "fast-check";
import { expect, test } from "vitest";
import { BUTTON_MARK } from "../../../functions/notions/BUTTON_MARK.ts";
import { isRefused, run } from "../../../functions/run.ts";

const mark = (...args: number[]) => run(BUTTON_MARK, args, { unit: "in" });

test("marks run evenly from the first to the last, both ends as told, and the middle one is half-way", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 80, noNaN: true }),
      fc.integer({ min: 1, max: 12 }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 5, noNaN: true }),
      (edge, half, top, bottom) => {
        const count = 2 * half + 1;
        const at = (n: number) => mark(n, edge, count, top, bottom) as number;
        expect(at(1)).toBeCloseTo(top, 9);
        expect(at(count)).toBeCloseTo(edge - bottom, 9);
        expect(at(half + 1)).toBeCloseTo((at(1) + at(count)) / 2, 9);
      },
    ),
    { seed: 12 },
  );
});

test("a single button stands at the top, and there is no button past the last one", () => {
  expect(mark(1, 5, 1, 0.75, 1)).toBe(0.75);
  expect(mark(2, 5, 1, 0.75, 1)).toBe("");
});

test("ends that leave nothing between them are refused", () => {
  const answer = mark(1, 4, 3, 3, 2);
  expect(isRefused(answer) && answer.refusal).toBe(
    "edge must be at least 5 in for the spaces kept clear at its ends, not 4 in",
  );
});
