import fc from "fast-check";
import { expect, test } from "vitest";
import { PETTICOAT_PANEL } from "../../../functions/flare/PETTICOAT_PANEL.ts";
import { direction, flatten } from "../../../functions/geometry/strokes.ts";
import { edgeLength, pieceBounds } from "../../../functions/pieces/piece.ts";
import { calls } from "../calls.ts";

const { piece, refusal, step } = calls(PETTICOAT_PANEL, "cm");

test("it is as long at back, side and front as measured there, and the hem lies straight", () => {
  const { edges, marks } = piece(150, 112, 109, 101, 0.6);
  expect(edgeLength(edges[3]!)).toBeCloseTo(112, 9);
  expect(edgeLength(edges[1]!)).toBeCloseTo(101, 9);
  expect(edgeLength(marks[0]!.line)).toBeCloseTo(109, 9);
  expect(marks[0]!.line[0]!.from[0]).toBeCloseTo(90, 9);
  expect(edges[2]![0]!.kind).toBe("line");
  expect(edgeLength(edges[2]!)).toBe(150);
  expect(pieceBounds(piece(150, 112, 109, 101, 0.6)).high).toBeCloseTo(112, 9);
});

test("its area is its length measured at many places, times the width between them", () => {
  const top = piece(150, 112, 109, 101).edges[0]!;
  let area = 0;
  for (const stroke of top) {
    if (stroke.kind !== "curve") throw new Error("a smooth top is drawn in curves");
    const at = (i: 0 | 1, t: number) =>
      (1 - t) ** 3 * stroke.from[i] +
      3 * t * (1 - t) ** 2 * stroke.c1[i] +
      3 * t * t * (1 - t) * stroke.c2[i] +
      t ** 3 * stroke.to[i];
    for (let k = 0; k < 2000; k += 1) {
      const [a, b] = [k / 2000, (k + 1) / 2000];
      area += (at(0, b) - at(0, a)) * (112 - at(1, (a + b) / 2));
    }
  }
  expect(step("area", 150, 112, 109, 101)).toBeCloseTo(area, 4);
});

test("between two heights the top never passes above the one or below the other", () => {
  // These two once fell to 100.19 and 88.64 between side and front.
  for (const args of [[60, 110, 101, 101], [60, 98, 90.5, 89.5, 0.36]] as const) {
    const top = piece(...args).edges[0]!;
    const lowest = Math.max(...top.flatMap((stroke) => flatten(stroke, 1e-4).map(([, y]) => y)));
    expect(args[1] - lowest).toBeCloseTo(args[3], 9);
  }
  const height = fc.double({ min: 80, max: 120, noNaN: true });
  fc.assert(
    fc.property(height, height, height, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (back, side, front, share) => {
      const top = piece(60, back, side, front, share).edges[0]!;
      const ends = [back, side, front];
      top.forEach((stroke, i) => {
        const way = Math.sign(ends[i]! - ends[i + 1]!);
        let [lastX, lastY] = stroke.from;
        for (const [x, y] of flatten(stroke, 1e-3)) {
          expect(x).toBeGreaterThan(lastX);
          expect((y - lastY) * (way || 1)).toBeGreaterThanOrEqual(-1e-9);
          if (way === 0) expect(y).toBeCloseTo(lastY, 9);
          [lastX, lastY] = [x, y];
        }
      });
    }),
    { seed: 21, numRuns: 200 },
  );
}); // biome-ignore format: one row a panel

test("the top runs over the side without a corner", () => {
  const [before, after] = piece(60, 110, 106, 101, 0.3).edges[0]!;
  const [[ax, ay], [bx, by]] = [direction(before!, 1), direction(after!, 0)];
  expect(ay / ax).toBeCloseTo(by / bx, 9);
});

test("without a pad it is a rectangle, its top as long as its hem", () => {
  expect(step("top_edge", 150, 100, 100, 100)).toBeCloseTo(150, 9);
});

test("a top too steep for its width is refused", () => {
  expect(refusal(10, 60, 30, 30)).toBe(
    "width must be more than 15 cm to shape a top that rises by 30 cm, not 10 cm",
  );
});
