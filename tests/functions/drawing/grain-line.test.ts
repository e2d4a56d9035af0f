import { describe, expect, test } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { grainDrawn, grainLine } from "../../../functions/drawing/grain-line.ts";
import type { Shape } from "../../../functions/drawing/shapes.ts";
import { flatten, type Point } from "../../../functions/geometry/strokes.ts";
import { flattenPiece, type Piece, readPiece } from "../../../functions/pieces/piece.ts";
import { explain } from "../../../functions/run.ts";
import { argumentsOf, setting } from "../laws.ts";

/** Turns of the outline about a point, by angles added up; ±1 within, 0 outside. */
function windings(outline: readonly Point[], [x, y]: Point): number {
  const angles = outline.map(([px, py]) => Math.atan2(py - y, px - x));
  const turns = angles.map((angle, i) => {
    const next = angles[(i + 1) % angles.length]! - angle;
    return next - 2 * Math.PI * Math.round(next / (2 * Math.PI));
  });
  return Math.round(turns.reduce((sum, turn) => sum + turn, 0) / (2 * Math.PI));
}

const pointsOf = (shape: Shape): Point[] =>
  shape.kind === "edge"
    ? [shape.edge[0]!.from, ...shape.edge.flatMap((stroke) => flatten(stroke, 0.01))]
    : [];

/** Whether a line lies in a piece; its ends may lie on the outline. */
function within(piece: Piece, line: Shape): boolean {
  const points = pointsOf(line);
  const middle = points
    .map(([x, y]) => [x, y])
    .reduce(([a, b], [x, y]) => [a! + x! / points.length, b! + y! / points.length], [0, 0]);
  const inner = points.map(([x, y]): Point => [x + (middle[0]! - x) / 50, y + (middle[1]! - y) / 50]);
  return inner.every((point) => windings(flattenPiece(piece, 0.01), point) !== 0);
}

test("on a crescent, whose middle is no cloth, the grain line lies in the cloth and along the grain", () => {
  const crescent = readPiece("M 0 0 A 20 20 0 0 0 40 0 L 34 0 A 14 14 0 0 1 6 0 Z");
  const line = grainDrawn(crescent);
  const [from, to] = pointsOf(line) as [Point, Point];
  expect(from[0]).toBe(to[0]);
  expect(to[1] - from[1]).toBeGreaterThan(4);
  expect(within(crescent, line)).toBe(true);
});

test("on the cloth it runs along the selvedge, three fifths of the longest stretch", () => {
  const [from, to] = grainLine([[0, 0], [30, 0], [30, 4], [10, 4], [10, 10], [0, 10]]); // biome-ignore format: corners in a row
  expect(from[1]).toBe(to[1]);
  expect(to[0] - from[0]).toBeCloseTo(18, 9);
  expect(from[1]).toBeLessThan(4);
});

describe("every piece is drawn with its grain marked, on the cloth", () => {
  const makers = [...catalogue.values()].filter(({ returns, draw }) => returns === "piece" && draw);
  test.each(
    makers.flatMap((maker) => maker.examples.map((example, i) => ({ name: maker.name, i, maker, example }))),
  )("$name, example $i", ({ maker, example }) => {
    const { shapes, answer } = explain(maker, argumentsOf(maker, example), setting(example.unit ?? "in"));
    const grain = shapes.filter((shape) => shape.kind === "edge" && shape.role === "grain");
    expect(grain.length).toBeGreaterThan(0);
    const drawn = shapes.flatMap((shape) => (shape.kind === "outline" ? [shape.piece] : []));
    const pieces = [...drawn, readPiece(String(answer))];
    for (const line of grain) expect(pieces.some((piece) => within(piece, line))).toBe(true);
  });
});
