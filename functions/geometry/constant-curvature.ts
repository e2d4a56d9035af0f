/**
 * Edges of constant curvature. A direction is given as its lean in radians: a lean of 0 runs along
 * +x, and a greater lean turns up the page, towards −y, as the top edge of a flared panel rises to
 * its right. The line perpendicular to the edge, down the panel, then leans by the same angle to the
 * right of straight down.
 */
import type { Point, Stroke } from "./strokes.ts";
import { line } from "./strokes.ts";

/** The direction across, along an edge. */
export const directionAcross = (lean: number): Point => [Math.cos(lean), -Math.sin(lean)];

/** The direction down the panel. */
export const directionDown = (lean: number): Point => [Math.sin(lean), Math.cos(lean)];

export const pointAhead = ([x, y]: Point, [dx, dy]: Point, length: number): Point => [
  x + dx * length,
  y + dy * length,
];

/** The end of an edge of this length that starts with `lean` and gains `bend` radians of lean per unit of length. */
export function arcEnd(from: Point, lean: number, bend: number, length: number): Point {
  const half = (bend * length) / 2;
  const chord = Math.abs(half) < 1e-9 ? length : (length * Math.sin(half)) / half;
  return pointAhead(from, directionAcross(lean + half), chord);
}

/** The edge itself: an arc, or a line when it bends by less than a millionth of a radian. */
export function arcFrom(from: Point, lean: number, bend: number, length: number): Stroke {
  const to = arcEnd(from, lean, bend, length);
  if (Math.abs(bend * length) < 1e-6) return line(from, to);
  const centre: Point = [from[0] - Math.sin(lean) / bend, from[1] - Math.cos(lean) / bend];
  return { kind: "arc", from, to, centre, radius: Math.abs(1 / bend), sweep: -bend * length };
}
