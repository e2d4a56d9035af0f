import fc from "fast-check";
import { expect, test } from "vitest";
import { BIAS_YIELD } from "../../../functions/cloth/BIAS_YIELD.ts";
import { explain, run } from "../../../functions/run.ts";

const args = (width: number, length: number, strip: number, seam = 0, least = 0) => [
  width,
  length,
  strip,
  seam,
  least,
];

test("the longest strip of a 36 in square is its diagonal, and all strips together have 861.174 in", () => {
  // BI-01 and BI-09 (geometry, 50 digits); the cut: Kinne & Cooley, Clothing and Health, 1916.
  const { answer, steps } = explain(BIAS_YIELD, args(36, 36, 1.5), { unit: "in" });
  expect(steps.find(({ name }) => name === "longest")!.value).toBeCloseTo(50.9116882454, 9);
  expect(answer).toBeCloseTo(861.174024, 5);
});

/** The strips cut one by one from the corner: the stretch of each middle line inside the cloth. */
function cutOneByOne(width: number, length: number, strip: number, seam: number, least: number): number {
  const inside = (c: number) => {
    // The line x − y = c against the sides x = 0, x = width, y = 0, y = length.
    const from = Math.max(0, c);
    const to = Math.min(width, length + c);
    return Math.max(to - from, 0) * Math.SQRT2;
  };
  const join = 2 * Math.SQRT2 * seam;
  const strips: number[] = [];
  for (const way of [1, -1]) {
    for (let i = 0; ; i += 1) {
      const outer = way * (i + 1) * strip * Math.SQRT2;
      if (outer > width + 1e-9 || -outer > length + 1e-9) break;
      const middle = inside(way * (i + 0.5) * strip * Math.SQRT2);
      if (middle >= Math.max(least, join) - 1e-9) strips.push(middle);
    }
  }
  return strips.reduce((sum, one) => sum + one, 0) - Math.max(0, strips.length - 1) * join;
}

const sizes = [
  fc.double({ min: 5, max: 120, noNaN: true }),
  fc.double({ min: 5, max: 300, noNaN: true }),
  fc.double({ min: 1, max: 12, noNaN: true }),
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.double({ min: 0, max: 40, noNaN: true }),
] as const;

test("the closed form counts the same strips as cutting them one by one", () => {
  fc.assert(
    fc.property(...sizes, (width, length, strip, seam, least) => {
      const long = Math.max(width, length);
      const short = Math.min(width, length);
      expect(run(BIAS_YIELD, args(width, length, strip, seam, least), { unit: "in" })).toBeCloseTo(
        cutOneByOne(short, long, strip, seam, least),
        6,
      );
    }),
    { seed: 8, numRuns: 500 },
  );
});

test("strips never have more area than the cloth", () => {
  fc.assert(
    fc.property(...sizes, (width, length, strip, seam, least) => {
      const found = run(BIAS_YIELD, args(width, length, strip, seam, least), { unit: "in" }) as number;
      expect(found).toBeGreaterThanOrEqual(0);
      expect(found * strip).toBeLessThanOrEqual(width * length * (1 + 1e-9));
    }),
    { seed: 9, numRuns: 500 },
  );
});
