import fc from "fast-check";
import { expect, test } from "vitest";
import { STOCK_COUNT } from "../../../functions/notions/STOCK_COUNT.ts";
import { type Argument, explain, isRefused, run } from "../../../functions/work.ts";

const count = (...args: Argument[]) => run(STOCK_COUNT, args, { unit: "in" });

/** The least number there can be, by trying every way; for a handful of lengths. */
function least(lengths: readonly number[], stock: number, left: number[] = []): number {
  const [first, ...others] = lengths;
  if (first === undefined) return left.length;
  let best = least(others, stock, [...left, stock - first]);
  left.forEach((room, i) => {
    if (room >= first - 1e-9) best = Math.min(best, least(others, stock, left.with(i, room - first)));
  });
  return best;
}

test("it is never below the best way of cutting and at most one length above it, for a handful of bones", () => {
  // Longest first from the first with room takes at most 11/9 of the best and 6/9 (Dósa 2007, from memory).
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 3, max: 20 }), { minLength: 1, maxLength: 7 }), (lengths) => {
      const found = count(
        lengths,
        lengths.map(() => 1),
        20,
      ) as number;
      const best = least(lengths, 20);
      expect(found).toBeGreaterThanOrEqual(best);
      expect(found).toBeLessThanOrEqual(Math.floor((11 * best + 6) / 9));
    }),
    { seed: 13, numRuns: 150 },
  );
});

test("what is lost at each cut counts, but not off the end of the stock", () => {
  expect(count([10], [4], 40)).toBe(1);
  expect(count([10], [4], 40, 0.5)).toBe(2);
  expect(count([9.5], [4], 39.5, 0.5)).toBe(1);
});

test("every length is drawn on one stock length, and none runs over its end", () => {
  const { shapes, answer } = explain(STOCK_COUNT, [[10, 12, 8], [4, 2, 4], 36, 0.25], { unit: "in" });
  const cuts = shapes.flatMap((shape) =>
    shape.kind === "edge" && shape.role === "cut" && shape.edge[0]!.from[1] === shape.edge[0]!.to[1]
      ? shape.edge
      : [],
  );
  expect(cuts).toHaveLength(10);
  for (const { to } of cuts) expect(to[0]).toBeLessThanOrEqual(36 + 1e-9);
  expect(new Set(cuts.map(({ from }) => from[1])).size).toBe(answer);
});

test("a bone longer than the stock, a half-blank line and an endless list are refused", () => {
  const refusal = (...args: Argument[]) => {
    const answer = count(...args);
    return isRefused(answer) ? answer.refusal : answer;
  };
  expect(refusal([40, 50], [1, 1], 45)).toBe("stock must be at least 50 in, the longest to cut, not 45 in");
  expect(refusal([40, 50], [1, null], 60)).toBe("quantities, number 2, is empty beside 50");
  expect(refusal([4, 5, 6], [500, 500, 1], 60)).toBe("quantities must come to at most 1000 in all, not 1001");
});
