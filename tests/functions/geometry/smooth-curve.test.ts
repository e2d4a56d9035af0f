import fc from "fast-check";
import { expect, test } from "vitest";
import { smoothClosed, smoothThrough } from "../../../functions/geometry/smooth-curve.ts";
import { distance, type Point, velocity } from "../../../functions/geometry/strokes.ts";
import { edgeLength, pieceArea } from "../../../functions/pieces/piece.ts";

const figure = fc.integer({ min: -4000, max: 4000 }).map((x) => x / 100);
const points = fc
  .array(fc.tuple(figure, figure), { minLength: 3, maxLength: 12 })
  .filter((list) => list.every((p, i) => distance(p, list[(i + 1) % list.length]!) > 0.5));

/** Velocity over length of span and bending over its square, at both ends of every stroke. */
function bends(list: readonly Point[], edge: ReturnType<typeof smoothThrough>) {
  return edge.map((stroke, i) => {
    if (stroke.kind !== "curve") throw new Error("a curve");
    const span = distance(list[i]!, list[(i + 1) % list.length]!);
    const { from, c1, c2, to } = stroke;
    const second = (a: Point, b: Point, c: Point) =>
      ([0, 1] as const).map((k) => (6 * (a[k] - 2 * b[k] + c[k])) / span ** 2);
    return {
      start: velocity(stroke, 0).map((v) => v / span),
      end: velocity(stroke, 1).map((v) => v / span),
      bendStart: second(from, c1, c2),
      bendEnd: second(c1, c2, to),
    };
  });
}

const near = (a: readonly number[], b: readonly number[], within = 1e-6) => {
  for (const [i, x] of a.entries()) expect(Math.abs(x - b[i]!)).toBeLessThan(within);
};

test("the curve goes through its points, turns and bends without a break, and its first two spans are one cubic, its last two also", () => {
  fc.assert(
    fc.property(points, (list) => {
      const edge = smoothThrough(list);
      expect(edge.map(({ from }) => from)).toEqual(list.slice(0, -1));
      const at = bends(list, edge);
      for (let i = 1; i < at.length; i += 1) {
        near(at[i]!.start, at[i - 1]!.end);
        near(at[i]!.bendStart, at[i - 1]!.bendEnd, 1e-4);
      }
      // Bending changes evenly along a cubic, so the bending at a third point lies in line with the first two.
      const long = list.slice(1).map((p, i) => distance(list[i]!, p));
      const even = (
        a: readonly number[],
        b: readonly number[],
        c: readonly number[],
        h: number,
        k: number,
      ) => {
        for (const i of [0, 1]) expect((c[i]! - b[i]!) * h - (b[i]! - a[i]!) * k).toBeCloseTo(0, 3);
      };
      if (list.length === 3) near(at[0]!.bendStart, at[1]!.bendEnd, 1e-4);
      else {
        even(at[0]!.bendStart, at[0]!.bendEnd, at[1]!.bendEnd, long[0]!, long[1]!);
        const last = at.length - 1;
        even(at[last]!.bendEnd, at[last]!.bendStart, at[last - 1]!.bendStart, long[last]!, long[last - 1]!);
      }
    }),
    { seed: 1978, numRuns: 100 },
  );
});

test("the closed curve has no break anywhere, its beginning included", () => {
  fc.assert(
    fc.property(points, (list) => {
      const at = bends(list, smoothClosed(list));
      expect(at).toHaveLength(list.length);
      at.forEach((here, i) => {
        const before = at[(i + at.length - 1) % at.length]!;
        near(here.start, before.end);
        near(here.bendStart, before.bendEnd, 1e-4);
      });
    }),
    { seed: 1978, numRuns: 100 },
  );
});

test("through points of a circle the closed curve nears the circle with the fourth power of their number", () => {
  const off = (count: number) => {
    const ring = Array.from({ length: count }, (_, i): Point => {
      const turn = (2 * Math.PI * i) / count;
      return [10 * Math.cos(turn), 10 * Math.sin(turn)];
    });
    const edge = smoothClosed(ring);
    return [
      Math.abs(edgeLength(edge) - 20 * Math.PI),
      Math.abs(pieceArea({ edges: [edge] }) - 100 * Math.PI),
    ];
  };
  const [eight, sixteen, thirtyTwo] = [off(8), off(16), off(32)];
  for (const i of [0, 1]) {
    expect(eight[i]! / sixteen[i]!).toBeGreaterThan(12);
    expect(sixteen[i]! / thirtyTwo[i]!).toBeGreaterThan(12);
  }
  expect(off(24)[0]).toBeLessThan(0.001);
});

test("through points in line, evenly or not, the curve is the line", () => {
  const list: Point[] = [0, 1, 2.5, 7, 7.5].map((t) => [3 * t, 4 * t]);
  expect(edgeLength(smoothThrough(list))).toBeCloseTo(37.5, 12);
  expect(smoothThrough(list.slice(0, 2))).toEqual([{ kind: "line", from: [0, 0], to: [3, 4] }]);
});
