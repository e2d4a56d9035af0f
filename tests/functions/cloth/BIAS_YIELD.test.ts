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

/** The part of a polygon on one side of the line y = x + c: above it for `side` 1, below it for −1. */
function cutOff(ring: readonly (readonly [number, number])[], c: number, side: 1 | -1) {
  const above = ([x, y]: readonly [number, number]) => side * (y - x - c);
  return ring.flatMap((a, i): (readonly [number, number])[] => {
    const b = ring[(i + 1) % ring.length]!;
    const [here, next] = [above(a), above(b)];
    const t = here / (here - next);
    const crossing = here * next < 0 ? [[a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])] as const] : [];
    return [...(here >= 0 ? [a] : []), ...crossing];
  });
}

const areaOf = (ring: readonly (readonly [number, number])[]) =>
  ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

test("each strip cut out of the cloth has the area of its length, and joins take what overlaps", () => {
  for (const width of [40, 91.44, 150])
    for (const length of [40, 100, 313])
      for (const strip of [2.5, 4, 11.3])
        for (const seam of [0, 0.6, 1.5])
          for (const least of [0, 20]) {
            const cloth = [[0, 0], [width, 0], [width, length], [0, length]] as const;
            const apart = strip * Math.SQRT2;
            const cut: number[] = [];
            // The first cut goes from the corner (0, 0); the last strips on either side are whole or left.
            for (let c = -Math.floor(width / apart + 1e-9); c < Math.floor(length / apart + 1e-9); c += 1) {
              const band = (from: number, to: number) => areaOf(cutOff(cutOff(cloth, from, 1), to, -1));
              const corner = length - width;
              // The strip with the cloth's far corner in it ends in a point, and is measured along its middle.
              const isBent = c * apart < corner - 1e-9 && corner + 1e-9 < (c + 1) * apart;
              const middle = (c + 0.5) * apart;
              const area = isBent
                ? band(middle - apart / 2e4, middle + apart / 2e4) * 1e4
                : band(c * apart, (c + 1) * apart);
              if (area / strip >= Math.max(least, 2 * Math.SQRT2 * seam) - 1e-9) cut.push(area);
            }
            // Where two strips are joined, a parallelogram as high as both allowances and as long as the slanting end is lost.
            const lost = 2 * seam * strip * Math.SQRT2 * Math.max(0, cut.length - 1);
            const long = (cut.reduce((sum, one) => sum + one, 0) - lost) / strip;
            expect(run(BIAS_YIELD, args(width, length, strip, seam, least), { unit: "cm" })).toBeCloseTo(long, 4);
          }
}); // biome-ignore format: loops in rows

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
