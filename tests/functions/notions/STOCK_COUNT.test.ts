import fc from "fast-check";
import { expect, test } from "vitest";
import { STOCK_COUNT } from "../../../functions/notions/STOCK_COUNT.ts";
import { type Argument, explain, isRefused, run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";

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

test("it is the least there is, by every way of cutting a handful of bones", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 3, max: 20 }), { minLength: 1, maxLength: 8 }), (lengths) => {
      const ones = lengths.map(() => 1);
      expect(count(lengths, ones, 20)).toBe(least(lengths, 20));
    }),
    { seed: 13, numRuns: 150 },
  );
});

test("lengths cut from so many full stock lengths fit into as many again, however they are listed", () => {
  // Each stock length of 100 is cut up without waste, so that no fewer can do and as many must.
  const share = fc.integer({ min: 8, max: 60 });
  const full = fc.array(share, { minLength: 2, maxLength: 8 }).map((wanted) => {
    const cut: number[] = [];
    for (const length of wanted) if (100 - cut.reduce((a, b) => a + b, 0) >= length + 8) cut.push(length);
    return [...cut, 100 - cut.reduce((a, b) => a + b, 0)];
  });
  let beaten = 0;
  fc.assert(
    fc.property(fc.array(full, { minLength: 1, maxLength: 9 }), (stocks) => {
      const lengths = stocks.flat();
      const ones = lengths.map(() => 1);
      expect(count(lengths, ones, 100)).toBe(stocks.length);
      if (longestFirst(lengths, 100) > stocks.length) beaten += 1;
    }),
    { seed: 14, numRuns: 120 },
  );
  expect(beaten).toBeGreaterThan(20);
});

/** What cutting the longest first, each from the first with room, takes. */
function longestFirst(lengths: readonly number[], stock: number): number {
  const left: number[] = [];
  for (const length of lengths.toSorted((a, b) => b - a)) {
    const at = left.findIndex((room) => room >= length - 1e-9);
    if (at < 0) left.push(stock - length);
    else left[at]! -= length;
  }
  return left.length;
}

test("a corset's bones of four lengths: three metres do where the longest first takes four", () => {
  expect(longestFirst([32, 32, 20, 20, 20, 10, 10, 36, 36, 36, 36], 100)).toBe(4);
  expect(count([32, 20, 10, 36], [2, 3, 2, 4], 100)).toBe(3);
});

test("a list too long to try every cutting is answered with the best found, and says so", () => {
  const lengths = Array.from({ length: 90 }, (_, i) => 17.03 + ((i * 7919) % 901) / 37);
  const explained = explain(STOCK_COUNT, [lengths, lengths.map(() => 2), 100], { unit: "cm" });
  const [steps, answer] = [explained.steps, explained.answer as number];
  const proved = steps.find(({ name }) => name === "least")!.value as number;
  const { rule } = steps.find(({ name }) => name === "count")!;
  expect(answer).toBeGreaterThanOrEqual(proved);
  expect(answer).toBeLessThanOrEqual(longestFirst([...lengths, ...lengths], 100));
  expect(rule).toMatch(new RegExp(`too long to try every way, and ${proved} might be enough`));
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
  expect(refusal([40, 50], [1, 1], 45)).toBe(
    "stock must be at least 50 in, the longest length to cut, not 45 in",
  );
  expect(refusal([40, 50], [1, null], 60)).toBe("quantities, number 2, is empty beside 50");
  expect(refusal([4, 5, 6], [500, 500, 1], 60)).toBe("quantities must come to at most 1000 in all, not 1001");
});

/** A list whose lengths leave so many ways that not all of them can be tried. */
const LONG = Array.from({ length: 45 }, (_, i) => 15.3 + ((i * 7.37) % 31.7));

test("a count that is not proved to be the least says so beside the answer, and a proved one does not", () => {
  const ones = LONG.map(() => 1);
  const { steps, answer, unusual } = explain(STOCK_COUNT, [LONG, ones, 100], { unit: "in" });
  const least = steps.find(({ name }) => name === "least")!.value as number;
  expect(least).toBeLessThan(answer as number);
  const sentence = `${answer} is the best found, not proved least: this list is too long to try every way, and ${least} might be enough`;
  expect(unusual).toEqual([sentence]);
  expect(toLookAt(STOCK_COUNT, [LONG, ones, 100], { unit: "in" })).toEqual([`STOCK_COUNT: ${sentence}`]);
  expect(toLookAt(STOCK_COUNT, [[30, 20], [4, 3], 100], { unit: "in" })).toEqual([]);
});
