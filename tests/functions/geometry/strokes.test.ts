import { Bezier } from "bezier-js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { readPath } from "../../../functions/geometry/path.ts";
import {
  arc,
  boundingBox,
  type Curve,
  distance,
  doubleSignedArea,
  flatten,
  integrate,
  type Point,
  pointAt,
  type Stroke,
  signedArea,
  speedAt,
  strokeLength,
  strokePart,
} from "../../../functions/geometry/strokes.ts";
import { pieceBounds } from "../../../functions/pieces/piece.ts";

const SEED = 1878;
const figure = fc.integer({ min: -5000, max: 5000 }).map((x) => x / 100);
const point = fc.tuple(figure, figure);
const curve = fc
  .tuple(point, point, point, point)
  .filter(([a, b, c, d]) => distance(a, b) + distance(b, c) + distance(c, d) > 1)
  .map(([from, c1, c2, to]): Curve => ({ kind: "curve", from, c1, c2, to }));
const anyArc = fc
  .tuple(
    point,
    fc.double({ min: 0.1, max: 60, noNaN: true }),
    figure,
    fc.double({ min: -6, max: 6, noNaN: true }),
  )
  .filter(([, , , sweep]) => Math.abs(sweep) > 1e-3)
  .map(([centre, radius, start, sweep]) => arc(centre, radius, start, start + sweep));
const stroke = fc.oneof(curve, anyArc);
const oracle = ({ from, c1, c2, to }: Curve) => new Bezier(...from, ...c1, ...c2, ...to);

test("a curve through the arc of y = x² from 0 to 1 is as long as the integral says", () => {
  // CU-01: (2√5 + asinh 2)/4, computed. A parabola is a quadratic curve; its cubic handles stand at two thirds.
  const parabola: Curve = { kind: "curve", from: [0, 0], c1: [1 / 3, 0], c2: [2 / 3, 1 / 3], to: [1, 1] };
  expect(Math.abs(strokeLength(parabola) - 1.4789428575446)).toBeLessThan(1e-12);
});

test("the chain curve y = cosh x is sinh 1 long from 0 to 1", () => {
  // CU-02, computed.
  expect(Math.abs(integrate((x) => Math.cosh(x), 0, 1) - 1.1752011936438)).toBeLessThan(1e-12);
});

test("the usual cubic for a quarter circle is a little longer than the quarter circle", () => {
  // CU-04: k = 0.5522847498, computed in 50 digits.
  const k = 0.5522847498;
  const quarter: Curve = { kind: "curve", from: [1, 0], c1: [1, k], c2: [k, 1], to: [0, 1] };
  expect(Math.abs(strokeLength(quarter) - 1.571016698074)).toBeLessThan(1e-9);
});

test.each([
  // Perimeters 4aE(m): DLMF 19.30, Abramowitz & Stegun 17.1 (from memory); GI-02 computed by AGM.
  [2, 1, 9.688448220548],
  [5, 3, 25.526998863398],
  [10, 1, 40.639741801009],
  [15, 10, 79.327197946453],
])("an ellipse of semi-axes %d and %d is %d round", (a, b, girth) => {
  const round = integrate((t) => Math.hypot(a * Math.sin(t), b * Math.cos(t)), 0, 2 * Math.PI);
  expect(Math.abs(round - girth)).toBeLessThan(1e-11 * girth);
});

test("curves are as long as an independent library finds them", () => {
  // The library sums 24 places of a Gauss rule over the whole curve, good to a few millionths on tame curves:
  // it is asked for the length in 16 parts.
  fc.assert(
    fc.property(curve, (one) => {
      const parts = Array.from({ length: 16 }, (_, i) =>
        oracle(one)
          .split(i / 16, (i + 1) / 16)
          .length(),
      );
      const length = parts.reduce((sum, part) => sum + part, 0);
      expect(Math.abs(strokeLength(one) - length)).toBeLessThan(2e-4 * length);
    }),
    { seed: SEED },
  );
});

test("a curve with no sharp turn is as long as the library finds it to nine figures", () => {
  fc.assert(
    fc.property(point, fc.double({ min: 1, max: 40, noNaN: true }), figure, figure, ([x, y], run, u, v) => {
      const gentle: Curve = {
        kind: "curve",
        from: [x, y],
        c1: [x + run, y + u / 4],
        c2: [x + 2 * run, y + v / 4],
        to: [x + 3 * run, y],
      };
      const parts = Array.from({ length: 16 }, (_, i) =>
        oracle(gentle)
          .split(i / 16, (i + 1) / 16)
          .length(),
      );
      const length = parts.reduce((sum, part) => sum + part, 0);
      expect(Math.abs(strokeLength(gentle) - length)).toBeLessThan(1e-9 * length);
    }),
    { seed: SEED },
  );
});

test("a curve reaches as far as the library's bounding box", () => {
  fc.assert(
    fc.property(curve, (one) => {
      const box = pieceBounds({ edges: [[one]] });
      const { x, y } = oracle(one).bbox();
      for (const [found, wanted] of [
        [box.left, x.min],
        [box.right, x.max],
        [box.low, y.min],
        [box.high, y.max],
      ] as const)
        expect(Math.abs(found - wanted)).toBeLessThan(1e-6);
    }),
    { seed: SEED },
  );
});

test("an arc reaches as far as ten thousand points on it", () => {
  fc.assert(
    fc.property(anyArc, (one) => {
      const box = pieceBounds({ edges: [[one]] });
      const seen = boundingBox(Array.from({ length: 10_001 }, (_, i) => pointAt(one, i / 10_000)));
      for (const side of ["left", "right", "low", "high"] as const)
        expect(Math.abs(box[side] - seen[side])).toBeLessThan(1e-5 * 60);
    }),
    { seed: SEED, numRuns: 30 },
  );
});

test("the parts of a stroke lie on it and their lengths and areas add up", () => {
  fc.assert(
    fc.property(stroke, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (one, cut) => {
      const [a, b] = [strokePart(one, 0, cut), strokePart(one, cut, 1)];
      expect(strokeLength(a) + strokeLength(b)).toBeCloseTo(strokeLength(one), 6);
      expect(doubleSignedArea(a) + doubleSignedArea(b)).toBeCloseTo(doubleSignedArea(one), 6);
      expect(distance(pointAt(a, 0.5), pointAt(one, cut / 2))).toBeLessThan(1e-9 * 100);
      expect(distance(pointAt(b, 0.5), pointAt(one, (1 + cut) / 2))).toBeLessThan(1e-9 * 100);
    }),
    { seed: SEED },
  );
});

/** The distance from a point to a chain of chords. */
function offChain(p: Point, chain: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < chain.length; i += 1) {
    const [a, b] = [chain[i - 1]!, chain[i]!];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const square = dx * dx + dy * dy || 1;
    const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square));
    least = Math.min(least, Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy));
  }
  return least;
}

test("no chord strays further from its stroke than it may", () => {
  fc.assert(
    fc.property(stroke, fc.constantFrom(0.5, 0.05, 0.01), (one: Stroke, tolerance) => {
      const chain = [one.from, ...flatten(one, tolerance)];
      for (let i = 0; i <= 400; i += 1)
        expect(offChain(pointAt(one, i / 400), chain)).toBeLessThan(tolerance * 1.001);
      expect(distance(chain.at(-1)!, one.to)).toBeLessThan(1e-9);
    }),
    { seed: SEED, numRuns: 60 },
  );
});

test("the area a stroke sweeps is that of many small triangles", () => {
  fc.assert(
    fc.property(stroke, (one) => {
      const chain = Array.from({ length: 4001 }, (_, i) => pointAt(one, i / 4000));
      // Closed through the origin, the polygon's area is half the sweep.
      const found = 2 * signedArea([[0, 0], ...chain]);
      expect(Math.abs(doubleSignedArea(one) - found)).toBeLessThan(2e-5 * 2500);
    }),
    { seed: SEED, numRuns: 40 },
  );
});

test("the length of a curve that turns back like a needle takes few steps", () => {
  // The tip of an ellipse 60 wide and two thousand million long; its parts agree to few figures of their own.
  const tip = readPath("M 10 10 A 59.69 1e9 4.31 1 1 147.39 27.62")[0]!.edges[0]![6]!;
  let asked = 0;
  const length = integrate(
    (share) => {
      asked += 1;
      return speedAt(tip, share);
    },
    0,
    1,
  );
  expect(Math.abs(length / 16896461.425 - 1)).toBeLessThan(1e-9);
  expect(asked).toBeLessThan(20_000);
});
