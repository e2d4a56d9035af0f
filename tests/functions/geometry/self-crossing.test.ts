import fc from "fast-check";
import { orient2d } from "robust-predicates";
import { expect, test } from "vitest";
import { selfCrossing } from "../../../functions/geometry/self-crossing.ts";
import type { Point } from "../../../functions/geometry/strokes.ts";

const SEED = 1925;

/** Every pair of sides compared with exact predicates: do two of them cross in their insides? */
function crossesByPairs(points: readonly Point[]): boolean {
  const n = points.length;
  const at = (i: number) => points[i % n]!;
  const side = (a: Point, b: Point, c: Point) => Math.sign(orient2d(...a, ...b, ...c));
  for (let i = 0; i < n; i += 1)
    for (let j = i + 2; j < n; j += 1) {
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true;
    }
  return false;
}

test("random outlines cross themselves exactly when a comparison of all pairs says so", () => {
  const figure = fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((x) => x / 10_000);
  let crossed = 0;
  fc.assert(
    fc.property(fc.array(fc.tuple(figure, figure), { minLength: 3, maxLength: 12 }), (points) => {
      // Only outlines in general position: touching is the next tests' matter.
      fc.pre(
        points.every((p, i) =>
          points.every((q, j) =>
            points.every((r, k) => i >= j || j >= k || Math.abs(orient2d(...p, ...q, ...r)) > 1e-3),
          ),
        ),
      );
      const wanted = crossesByPairs(points);
      crossed += wanted ? 1 : 0;
      expect(selfCrossing(points) !== null).toBe(wanted);
    }),
    { seed: SEED, numRuns: 2000 },
  );
  expect(crossed).toBeGreaterThan(200);
});

test("a star-shaped outline of any number of points does not cross itself; with two points swapped it may", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 5, max: 10, noNaN: true }), { minLength: 6, maxLength: 400 }),
      fc.nat(),
      (radii, pick) => {
        const points = radii.map((r, i): Point => {
          const turn = (2 * Math.PI * i) / radii.length;
          return [r * Math.cos(turn), r * Math.sin(turn)];
        });
        expect(selfCrossing(points)).toBeNull();
        const swapped = [...points];
        const i = pick % (points.length - 1);
        [swapped[i], swapped[i + 1]] = [points[i + 1]!, points[i]!];
        expect(selfCrossing(swapped) !== null).toBe(crossesByPairs(swapped));
      },
    ),
    { seed: SEED, numRuns: 60 },
  );
});

const outlines: [string, boolean, number[]][] = [
  ["a bow tie", true, [0, 0, 10, 10, 10, 0, 0, 12]],
  ["a bow tie with both corners at the crossing", true, [0, 0, 5, 5, 10, 10, 10, 0, 5, 5, 0, 12]],
  ["a bow tie with one corner at the crossing", true, [0, 0, 10, 10, 10, 0, 5, 5, 0, 12]],
  ["a corner pushed through a side", true, [0, 0, 10, 0, 10, 10, 5, -1, 0, 10]],
  ["a corner that just touches a side", false, [0, 0, 10, 0, 10, 10, 5, 0, 0, 10]],
  ["two corners that touch", false, [0, 0, 10, 0, 10, 10, 5, 5, 8, 10, 2, 10, 5, 5, 0, 8]],
  ["a slit cut in and back along itself", false, [0, 0, 10, 0, 10, 5, 5, 5, 10, 5, 10, 10, 0, 10]],
  ["a square drawn twice over", true, [0, 0, 10, 0, 10, 10, 0, 10, 0, 0, 10, 0, 10, 10, 0, 10]],
  ["a point told twice", false, [0, 0, 10, 0, 10, 0, 10, 10, 0, 10, 0, 0]],
  ["a pentagram", true, [0, -10, 5.88, 8.09, -9.51, -3.09, 9.51, -3.09, -5.88, 8.09]],
];

test.each(outlines)("%s: crosses itself %s", (_, wanted, figures) => {
  const points = figures.flatMap((x, i): Point[] => (i % 2 === 0 ? [[x, figures[i + 1]!]] : []));
  // From every starting corner, both ways round, turned and far from the origin.
  for (let start = 0; start < points.length; start += 1) {
    const from = [...points.slice(start), ...points.slice(0, start)];
    for (const way of [from, [...from].reverse()]) {
      for (const turn of [0, 0.3, 1.1]) {
        const moved = way.map(
          ([x, y]): Point => [
            x * Math.cos(turn) - y * Math.sin(turn) + 200,
            x * Math.sin(turn) + y * Math.cos(turn) - 30,
          ],
        );
        expect(selfCrossing(moved) !== null).toBe(wanted);
      }
    }
  }
});
