import { FillRule, minkowskiSum, union } from "clipper2-ts";
import { describe, expect, it } from "vitest";
import type { Point } from "../../../functions/geometry/strokes.ts";
import { DepthField } from "../../../src/lay/depth.ts";
import { noFitPolygon } from "../../../src/lay/no-fit-polygon.ts";
import { signedArea, turned } from "../../../src/lay/outline.ts";
import { seeded } from "../../../src/lay/random.ts";
import { counterClockwise } from "../../../src/lay/shape.ts";
import { blob } from "./blobs.ts";
import { publishedQuestion } from "./published.ts";

/** The area of the same sum from the general-purpose library alone: border swept over border, and filled. */
function sweptArea(a: readonly Point[], b: readonly Point[]): number {
  const scale = 2 ** 18;
  const own = a.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) }));
  const other = b.map(([x, y]) => ({ x: Math.round(-x * scale), y: Math.round(-y * scale) }));
  const sums = minkowskiSum(own, other, true);
  sums.push(own.map(({ x, y }) => ({ x: x + other[0]!.x, y: y + other[0]!.y })));
  sums.push(other.map(({ x, y }) => ({ x: x + own[0]!.x, y: y + own[0]!.y })));
  const rings = union(sums, FillRule.NonZero);
  return rings.reduce((sum, ring) => sum + signedArea(ring.map(({ x, y }) => [x / scale, y / scale])), 0);
}

const areaOf = (rings: readonly Point[][]) => rings.reduce((sum, ring) => sum + signedArea(ring), 0);

describe("the no-fit polygon", () => {
  it("of two squares is the square of both their sides", () => {
    const square = (side: number): Point[] => [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
    ];
    const [ring, ...more] = noFitPolygon(square(4), square(3));
    expect(more).toEqual([]);
    expect(signedArea(ring!)).toBe(49);
    expect([...ring!].sort((p, q) => p[0] - q[0] || p[1] - q[1])).toEqual([
      [-3, -3],
      [-3, 4],
      [4, -3],
      [4, 4],
    ]);
  });

  it("has a hole of one point's room and more where a piece fits into a hollow", () => {
    const frame: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
      [0, 6],
      [3, 6],
      [3, 8],
      [8, 8],
      [8, 2],
      [3, 2],
      [3, 5],
      [0, 5],
    ];
    const holes = noFitPolygon(frame, [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
    ]).filter((ring) => signedArea(ring) < 0);
    expect(holes.map(signedArea)).toEqual([-2]);
  });

  for (const name of ["albano", "dagli", "mao", "shirts", "jakobs1", "shapes1", "fu"])
    it(`has the area that sweeping gives, for all pairs of ${name}`, () => {
      const outlines = publishedQuestion(name).pieces.map((piece) => counterClockwise(piece.outline));
      for (const a of outlines)
        for (const b of outlines) expect(areaOf(noFitPolygon(a, b)) / sweptArea(a, b)).toBeCloseTo(1, 5);
    });

  it("has the area that sweeping gives for curved pieces (seed 8)", () => {
    const random = seeded(8);
    for (let k = 0; k < 12; k++) {
      const [a, b] = [blob(random, 30, 9, 4), blob(random, 23, 5, 7)];
      expect(areaOf(noFitPolygon(a, b)) / sweptArea(a, b)).toBeCloseTo(1, 5);
    }
  });
});

describe("the depth in a no-fit polygon", () => {
  const square: Point[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ];

  it("is the way to the nearest side, and nothing outside", () => {
    const field = new DepthField([square], 0);
    expect(field.depth(5, 2)).toBeCloseTo(2, 12);
    expect(field.wayOut[0]).toBeCloseTo(0, 12);
    expect(field.wayOut[1]).toBeCloseTo(-1, 12);
    expect(field.depth(9.5, 4)).toBeCloseTo(0.5, 12);
    for (const [x, y] of [
      [-0.1, 5],
      [10, 5],
      [5, 10.0001],
      [30, 30],
    ] as const)
      expect(field.depth(x, y)).toBe(0);
  });

  it("counts the gap on, round the corners too", () => {
    const field = new DepthField([square], 1);
    expect(field.depth(5, 2)).toBeCloseTo(3, 12);
    expect(field.depth(10.25, 4)).toBeCloseTo(0.75, 12);
    expect(field.depth(10.6, 10.8)).toBe(0);
    expect(field.depth(10.3, 10.4)).toBeCloseTo(0.5, 12);
  });

  for (const gap of [0, 0.3])
    it(`agrees with all edges asked one by one, at 4000 places round curved pieces (gap ${gap}, seed 4)`, () => {
      const random = seeded(4);
      agrees(noFitPolygon(blob(random, 40, 9, 4), blob(random, 31, 5, 7)), gap, 4000, random);
    });

  it("agrees with all edges asked one by one, round every pair of the pieces of mao (seed 5)", () => {
    const random = seeded(5);
    const { pieces } = publishedQuestion("mao");
    pieces.forEach((a, i) => {
      for (const b of pieces.slice(i))
        for (const gap of [0, 20]) {
          const rings = noFitPolygon(counterClockwise(a.outline), turned(counterClockwise(b.outline), 180));
          agrees(rings, gap, 300, random);
        }
    });
  });
});

/** Asks a field for the depth at random places, and all edges one by one. */
function agrees(
  rings: readonly (readonly Point[])[],
  gap: number,
  places: number,
  random: () => number,
): void {
  const field = new DepthField(rings, gap);
  const { left, right, low, high } = field;
  for (let k = 0; k < places; k++) {
    const x = left + (right - left) * (1.1 * random() - 0.05);
    const y = low + (high - low) * (1.1 * random() - 0.05);
    let least = Infinity;
    let odd = false;
    for (const ring of rings)
      ring.forEach(([ax, ay], i) => {
        const [bx, by] = ring[(i + 1) % ring.length]!;
        const t = Math.min(
          1,
          Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)),
        );
        least = Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
        if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) odd = !odd;
      });
    const expected = Math.max(0, odd ? gap + least : gap - least);
    const depth = field.depth(x, y);
    if (Math.abs(depth - expected) > 1e-9 * (right - left)) expect(depth).toBe(expected);
  }
}
