/**
 * The checker's measuring: how far two outlines overlap, how far apart they are, how far one
 * sticks out of another. Sides are decided exactly (Shewchuk, Adaptive Precision Floating-Point
 * Arithmetic and Fast Robust Geometric Predicates, 1997), depths are then plain distances.
 */
import { orient2d } from "robust-predicates";
import type { Point } from "../../functions/geometry/strokes.ts";

/**
 * How deep two outlines overlap: 0 when they are apart or touch. The border of the common part
 * is made of stretches of either outline inside the other; the deepest point found on these,
 * or at the heart of one inside the other, is the answer (to within a small factor).
 */
export function overlapBy(
  a: readonly Point[],
  ha: Point,
  b: readonly Point[],
  hb: Point,
  slack: number,
): number {
  let depth = Math.max(deepest(a, b), deepest(b, a));
  // Two equal outlines on one another have no stretch inside: their hearts tell.
  for (const [heart, own, other] of [
    [ha, a, b],
    [hb, b, a],
  ] as const)
    if (inside(heart, other))
      depth = Math.max(depth, Math.min(distanceToOutline(heart, own), distanceToOutline(heart, other)));
  return depth > slack ? depth : 0;
}

/** Where on a stretch between crossings its side is asked, and its depth measured. */
const MIDDLES = [0.25, 0.5, 0.75];
const PARTS = [0, 0.25, 0.5, 0.75, 1];

/** The deepest point of a's border inside b, looked for at corners and along each stretch between crossings. */
function deepest(a: readonly Point[], b: readonly Point[]): number {
  const xs = b.map((p) => p[0]);
  const ys = b.map((p) => p[1]);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  let depth = 0;
  for (let i = 0; i < a.length; i++) {
    const p = a[i]!;
    const q = a[(i + 1) % a.length]!;
    if (Math.max(p[0], q[0]) < left || Math.min(p[0], q[0]) > right) continue;
    if (Math.max(p[1], q[1]) < low || Math.min(p[1], q[1]) > high) continue;
    const cuts = [0, 1];
    for (let j = 0; j < b.length; j++) {
      const t = crossingAt(p, q, b[j]!, b[(j + 1) % b.length]!);
      if (t !== null) cuts.push(t);
    }
    cuts.sort((s, t) => s - t);
    const on = (t: number): Point => [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
    for (let k = 0; k + 1 < cuts.length; k++) {
      const at = (part: number) => on(cuts[k]! + part * (cuts[k + 1]! - cuts[k]!));
      if (!MIDDLES.some((part) => inside(at(part), b))) continue;
      for (const part of PARTS)
        if (inside(at(part), b)) depth = Math.max(depth, distanceToOutline(at(part), b));
    }
  }
  return depth;
}

/** The furthest point of `points`' border outside `outline`. */
export function outsideBy(points: readonly Point[], outline: readonly Point[]): number {
  let by = 0;
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!;
    const q = points[(i + 1) % points.length]!;
    const cuts = [0, 1];
    for (let j = 0; j < outline.length; j++) {
      const t = crossingAt(p, q, outline[j]!, outline[(j + 1) % outline.length]!);
      if (t !== null) cuts.push(t);
    }
    cuts.sort((s, t) => s - t);
    const on = (t: number): Point => [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
    for (let k = 0; k + 1 < cuts.length; k++) {
      const at = (part: number) => on(cuts[k]! + part * (cuts[k + 1]! - cuts[k]!));
      if (MIDDLES.every((part) => inside(at(part), outline))) continue;
      for (const part of PARTS)
        if (!inside(at(part), outline)) by = Math.max(by, distanceToOutline(at(part), outline));
    }
  }
  // A notch of the cloth that lies wholly within the piece shows as the cloth's corners inside it.
  for (const corner of outline)
    if (inside(corner, points)) by = Math.max(by, distanceToOutline(corner, points));
  return by;
}

/** Where on p–q (0 to 1) it crosses c–d from one side to the other; null when it does not. */
function crossingAt(p: Point, q: Point, c: Point, d: Point): number | null {
  if (Math.max(p[0], q[0]) < Math.min(c[0], d[0]) || Math.min(p[0], q[0]) > Math.max(c[0], d[0])) return null;
  if (Math.max(p[1], q[1]) < Math.min(c[1], d[1]) || Math.min(p[1], q[1]) > Math.max(c[1], d[1])) return null;
  const sc = orient2d(p[0], p[1], q[0], q[1], c[0], c[1]);
  const sd = orient2d(p[0], p[1], q[0], q[1], d[0], d[1]);
  if ((sc > 0 && sd > 0) || (sc < 0 && sd < 0) || (sc === 0 && sd === 0)) return null;
  const sp = orient2d(c[0], c[1], d[0], d[1], p[0], p[1]);
  const sq = orient2d(c[0], c[1], d[0], d[1], q[0], q[1]);
  if ((sp > 0 && sq > 0) || (sp < 0 && sq < 0)) return null;
  return sp / (sp - sq);
}

/** Even-odd, with the sides decided exactly. */
function inside([x, y]: Point, outline: readonly Point[]): boolean {
  let odd = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[j]!;
    const [bx, by] = outline[i]!;
    if (ay > y === by > y) continue;
    if (ax < x && bx < x) continue;
    const side = orient2d(ax, ay, bx, by, x, y);
    if (by > ay ? side < 0 : side > 0) odd = !odd;
  }
  return odd;
}

function distanceToOutline(p: Point, outline: readonly Point[]): number {
  let least = Infinity;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++)
    least = Math.min(least, distanceToSegment(p, outline[j]!, outline[i]!));
  return least;
}

function distanceToSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const ux = bx - ax;
  const uy = by - ay;
  const long = ux * ux + uy * uy;
  const t = long > 0 ? Math.min(1, Math.max(0, ((x - ax) * ux + (y - ay) * uy) / long)) : 0;
  return Math.hypot(x - ax - t * ux, y - ay - t * uy);
}

/** Least distance between two outlines that do not cross, as far as it is below `reach`. */
export function outlineDistance(a: readonly Point[], b: readonly Point[], reach: number): number {
  let least = reach;
  for (const [from, to] of [
    [a, b],
    [b, a],
  ] as const)
    for (const p of from)
      for (let i = 0, j = to.length - 1; i < to.length; j = i++) {
        const c = to[j]!;
        const d = to[i]!;
        if (Math.min(c[0], d[0]) - p[0] > least || p[0] - Math.max(c[0], d[0]) > least) continue;
        if (Math.min(c[1], d[1]) - p[1] > least || p[1] - Math.max(c[1], d[1]) > least) continue;
        least = Math.min(least, distanceToSegment(p, c, d));
      }
  return least;
}
