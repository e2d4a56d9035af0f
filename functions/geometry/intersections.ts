/** The intersections of two strokes: rough places from the chords of short parts, then Newton's method. */
import { distance, type Point, pointAt, pointBetween, radians, type Stroke, velocity } from "./strokes.ts";

/** An intersection: its place, and the share of each stroke's own parameter there. */
export interface Intersection {
  readonly point: Point;
  readonly a: number;
  readonly b: number;
}

/** Shares outside 0 to 1 by no more than this count as the end. */
const END_TOLERANCE = 1e-9;
const within = (share: number): boolean => share >= -END_TOLERANCE && share <= 1 + END_TOLERANCE;
const clamp = (share: number): number => Math.min(1, Math.max(0, share));

/** All places where two strokes cross or touch end to end; a shared stretch is not reported. */
export function intersections(a: Stroke, b: Stroke): Intersection[] {
  const found: Intersection[] = [];
  if (boxesAreApart(a, b)) return found;
  for (const [s, t] of roughIntersections(a, b)) {
    const meeting = refine(a, b, s, t);
    if (meeting && !found.some((other) => distance(other.point, meeting.point) <= 1e-9 * size(a))) {
      found.push(meeting);
    }
  }
  return found;
}

/** Whether the bounding boxes of the strokes are apart; a curve never leaves the box of its four points. */
function boxesAreApart(a: Stroke, b: Stroke): boolean {
  const slack = 1e-6 * Math.max(size(a), size(b));
  return areApartAlong(a, b, 0, slack) || areApartAlong(a, b, 1, slack);
}

function areApartAlong(a: Stroke, b: Stroke, axis: 0 | 1, slack: number): boolean {
  const [p, q] = [extentAlong(a, axis), extentAlong(b, axis)];
  return p[0] > q[1] + slack || q[0] > p[1] + slack;
}

function extentAlong(stroke: Stroke, axis: 0 | 1): readonly [number, number] {
  if (stroke.kind === "arc")
    return [stroke.centre[axis] - stroke.radius, stroke.centre[axis] + stroke.radius];
  const [p, q] = [stroke.from[axis], stroke.to[axis]];
  if (stroke.kind === "line") return [Math.min(p, q), Math.max(p, q)];
  const [r, s] = [stroke.c1[axis], stroke.c2[axis]];
  return [Math.min(p, q, r, s), Math.max(p, q, r, s)];
}

const size = (stroke: Stroke): number =>
  Math.max(distance(stroke.from, stroke.to), stroke.kind === "arc" ? stroke.radius : 0);

/** How many parts to divide a stroke into so that each part is nearly straight. */
function partCount(stroke: Stroke): number {
  if (stroke.kind === "line") return 1;
  return stroke.kind === "arc" ? Math.ceil(Math.abs(stroke.sweep) / radians(10)) : 24;
}

/** Rough intersections: where the chords of the parts cross, each chord lengthened by a tenth at both ends. */
function roughIntersections(a: Stroke, b: Stroke): [number, number][] {
  const [m, n] = [partCount(a), partCount(b)];
  const [pa, pb] = [chords(a, m), chords(b, n)];
  const found: [number, number][] = [];
  for (let i = 0; i < m; i += 1) {
    const ax = pa[2 * i]!;
    const ay = pa[2 * i + 1]!;
    const rx = pa[2 * i + 2]! - ax;
    const ry = pa[2 * i + 3]! - ay;
    for (let j = 0; j < n; j += 1) {
      const cx = pb[2 * j]!;
      const cy = pb[2 * j + 1]!;
      const sx = pb[2 * j + 2]! - cx;
      const sy = pb[2 * j + 3]! - cy;
      const cross = rx * sy - ry * sx;
      if (cross * cross <= 1e-24 * (rx * rx + ry * ry) * (sx * sx + sy * sy)) continue;
      const t = ((cx - ax) * sy - (cy - ay) * sx) / cross;
      if (!(t >= -0.1 && t <= 1.1)) continue;
      const u = ((cx - ax) * ry - (cy - ay) * rx) / cross;
      if (u >= -0.1 && u <= 1.1) found.push([(i + t) / m, (j + u) / n]);
    }
  }
  return found;
}

/** The ends of the chords of a stroke's parts, as x, y, x, y. */
function chords(stroke: Stroke, count: number): readonly number[] {
  const ends: number[] = [];
  for (let i = 0; i <= count; i += 1) {
    const at = pointAt(stroke, i / count);
    ends.push(at[0], at[1]);
  }
  return ends;
}

/** Newton's method on the two parameters; null when it does not converge inside both strokes. */
function refine(a: Stroke, b: Stroke, s: number, t: number): Intersection | null {
  let [u, v] = [s, t];
  const close = 1e-12 * Math.max(size(a), size(b));
  for (let i = 0; i < 20; i += 1) {
    const [p, q] = [pointAt(a, u), pointAt(b, v)];
    const [x, y] = [q[0] - p[0], q[1] - p[1]];
    const [ax, ay] = derivative(a, u);
    const [bx, by] = derivative(b, v);
    const cross = ax * by - ay * bx;
    if (cross * cross <= 1e-28 * (ax * ax + ay * ay) * (bx * bx + by * by)) return null;
    u += (x * by - y * bx) / cross;
    v += (x * ay - y * ax) / cross;
    if (Math.hypot(x, y) <= close && i > 0) {
      if (!within(u) || !within(v)) return null;
      return { point: pointBetween(p, q, 0.5), a: clamp(u), b: clamp(v) };
    }
    if (Math.abs(u) > 3 || Math.abs(v) > 3) return null;
  }
  return null;
}

/** The derivative of the point with respect to the parameter. */
function derivative(stroke: Stroke, share: number): Point {
  if (stroke.kind === "line") return [stroke.to[0] - stroke.from[0], stroke.to[1] - stroke.from[1]];
  if (stroke.kind === "curve") return velocity(stroke, share);
  const [x, y] = pointAt(stroke, share);
  return [-(y - stroke.centre[1]) * stroke.sweep, (x - stroke.centre[0]) * stroke.sweep];
}
