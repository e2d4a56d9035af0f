import fc from "fast-check";
import { expect, test } from "vitest";
import type { Point } from "../../../functions/geometry/strokes.ts";
import { spotFor } from "../../../src/lay/name-spot.ts";

const rectangle = (wide: number, high: number): Point[] => [
  [0, 0],
  [wide, 0],
  [wide, high],
  [0, high],
];
const level = (from: number, to: number, y: number): [Point, Point] => [
  [from, y],
  [to, y],
];

test("a name stands along the cloth just clear of the grain line", () => {
  const spot = spotFor(rectangle(120, 80), 60, 11, level(40, 80, 40))!;
  expect(spot.turn).toBe(0);
  expect(Math.abs(spot.at[1] - 40)).toBeGreaterThanOrEqual(11 / 2 + 5);
  expect(Math.abs(spot.at[1] - 40)).toBeLessThan(16);
});

test("on a narrow piece it is turned and read from the right, on one too small it is left out", () => {
  expect(spotFor(rectangle(24, 120), 60, 11, level(6, 18, 20))!.turn).toBe(-90);
  expect(spotFor(rectangle(24, 40), 60, 11, level(6, 18, 20))).toBeNull();
});

test("in a hollow piece it stands on cloth, not in the hollow", () => {
  // A U lying on its side: the middle of its box is no cloth.
  const outline: Point[] = [
    [0, 0],
    [100, 0],
    [100, 20],
    [20, 20],
    [20, 80],
    [100, 80],
    [100, 100],
    [0, 100],
  ];
  const { at } = spotFor(outline, 40, 11, level(30, 90, 90))!;
  expect(at[1]).toBeLessThan(20);
});

test("whatever the triangle, no corner of the text's box is outside it", () => {
  const point = fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 200 }));
  const side = (a: Point, b: Point, p: Point) =>
    Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));
  fc.assert(
    fc.property(point, point, point, (a, b, c) => {
      const spot = spotFor([a, b, c], 30, 11, level(-50, -40, -50));
      if (!spot) return;
      const [w, h] = spot.turn === 0 ? [15, 5.5] : [5.5, 15];
      for (const [dx, dy] of [
        [-w, -h],
        [w, -h],
        [w, h],
        [-w, h],
      ] as const) {
        // biome-ignore format: the corners
        const corner: Point = [spot.at[0] + dx, spot.at[1] + dy];
        const sides = [side(a, b, corner), side(b, c, corner), side(c, a, corner)];
        expect(Math.abs(sides.reduce((sum, one) => sum + one, 0))).toBeGreaterThanOrEqual(2);
      }
    }),
    { seed: 20_261, numRuns: 300 },
  );
});
