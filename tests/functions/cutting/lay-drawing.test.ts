import { expect, test } from "vitest";
import { CLOTH_CHECK } from "../../../functions/cloth/CLOTH_CHECK.ts";
import { YARDAGE } from "../../../functions/cloth/YARDAGE.ts";
import type { Shape } from "../../../functions/drawing/shapes.ts";
import { flatten, type Point } from "../../../functions/geometry/strokes.ts";
import { pieceArea, pieceBounds, readPiece } from "../../../functions/pieces/piece.ts";
import { type Argument, explain } from "../../../functions/run.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const setting = { unit: "in", plan: quickLay } as const;
const bodice = "M 0 2 C 3 2 5 0 5 0 L 12 1 C 9 4 10 8 13 9 L 12 20 L 0 22 Z";
const moon = "M 0 0 A 20 20 0 0 0 0 40 A 26 26 0 0 1 0 0 Z";

const outlines = (shapes: readonly Shape[]) =>
  shapes.flatMap((shape) => (shape.kind === "outline" ? [shape.piece] : []));
const corners = (piece: ReturnType<typeof outlines>[number]): Point[] =>
  piece.edges.flat().flatMap((stroke) => flatten(stroke, 0.01));

/** Even-odd: how often a ray to the right leaves through the outline. */
function inside([x, y]: Point, ring: readonly Point[]): boolean {
  let odd = false;
  ring.forEach(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    if (ay <= y !== by <= y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) odd = !odd;
  });
  return odd;
}

test("every copy is drawn on the cloth in its own size", () => {
  const { shapes, answer } = explain(YARDAGE, [[bodice, moon], [4, 2], 45], setting);
  const drawn = outlines(shapes);
  expect(drawn).toHaveLength(6);
  const areas = drawn.map(pieceArea).sort((a, b) => a - b);
  expect(areas[0]).toBeCloseTo(pieceArea(readPiece(bodice)), 0);
  expect(areas[5]).toBeCloseTo(pieceArea(readPiece(moon)), 0);
  for (const piece of drawn) {
    const { left, right, low, high } = pieceBounds(piece);
    expect(Math.min(left, low)).toBeGreaterThanOrEqual(-1e-6);
    expect(right).toBeLessThanOrEqual((answer as number) + 1e-6);
    expect(high).toBeLessThanOrEqual(45 + 0.01);
  }
});

test("a grain line lies inside every outline, along the selvedge, hollow ones too", () => {
  const { shapes } = explain(YARDAGE, [[bodice, moon], [4, 2], 45], setting);
  const lines = shapes.flatMap((shape) =>
    shape.kind === "edge" && shape.role === "grain" ? [shape.edge[0]!] : [],
  );
  const rings = outlines(shapes).map(corners);
  expect(lines).toHaveLength(6);
  lines.forEach(({ from, to }, i) => {
    expect(from[1]).toBeCloseTo(to[1], 9);
    for (const share of [0, 0.25, 0.5, 0.75, 1])
      expect(inside([from[0] + (to[0] - from[0]) * share, from[1]], rings[i]!)).toBe(true);
  });
});

test("cloths in hand lie one under another, and what is left over is dimensioned", () => {
  const args: Argument[] = [[bodice], [6], [30, 45], [50, 60]];
  const { shapes } = explain(CLOTH_CHECK, args, setting);
  const labels = shapes.flatMap((shape) => ("label" in shape && shape.label ? [shape.label] : []));
  expect(labels).toEqual(expect.arrayContaining(["cloth 1", "cloth 2", "left over"]));
  for (const piece of outlines(shapes)) {
    const { low, high } = pieceBounds(piece);
    // 30 in of the first cloth, a space, and 45 in of the second.
    expect(high <= 30.01 || low >= 30 + (6 * 30) / 16 - 0.01).toBe(true);
  }
});
