/**
 * An outline with fewer points that holds the whole of the old one: dents are bridged and corners
 * cut off by an edge are drawn out to where its neighbours meet. What is laid with the fuller
 * outline is also laid with the true one.
 */
import type { Point } from "../../functions/geometry/strokes.ts";
import { crossing } from "./outline.ts";

interface Cut {
  /** Area added by the step, and how far the border moves at most. */
  readonly cost: number;
  readonly moves: number;
  /** The corner that replaces edge i → i+1; null when point i is left out. */
  readonly corner: Point | null;
}

/**
 * A counter-clockwise outline reduced to at most `most` points, as far as no step moves the border
 * by more than `reach` (in the outline's unit). Steps that move it by less than a hundredth of
 * `reach` are made anyway.
 */
export function simplified(outline: readonly Point[], most: number, reach: number): readonly Point[] {
  const points = [...outline];
  const barred = new Set<Point>();
  while (points.length > 3) {
    let best: Cut | null = null;
    let at = -1;
    for (let i = 0; i < points.length; i++) {
      if (barred.has(points[i]!)) continue;
      const cut = cutAt(points, i);
      if (!cut || cut.moves > reach) continue;
      if (points.length <= most && cut.moves > reach / 100) continue;
      if (!best || cut.cost < best.cost) {
        best = cut;
        at = i;
      }
    }
    if (!best) break;
    const before = [...points];
    // The only edges that are new: one where a dent was, else the two that meet in the corner.
    const n = points.length - 1;
    let fresh: number[];
    if (best.corner === null) {
      points.splice(at, 1);
      fresh = [(at + n - 1) % n];
    } else {
      points[at] = best.corner;
      points.splice((at + 1) % points.length, 1);
      const corner = Math.min(at, n - 1);
      fresh = [(corner + n - 1) % n, corner];
    }
    if (crossing(points, fresh)) {
      barred.add(before[at]!);
      points.splice(0, points.length, ...before);
    }
  }
  return points;
}

/** The step at point i: leave it out when it is a dent, or draw the edge from it out to a corner. */
function cutAt(points: readonly Point[], i: number): Cut | null {
  const n = points.length;
  const o = points[(i + n - 1) % n]!;
  const p = points[i]!;
  const q = points[(i + 1) % n]!;
  const r = points[(i + 2) % n]!;
  const atP = cross(o, p, q);
  if (atP <= 0) return { cost: -atP / 2, moves: height(o, q, p), corner: null };
  if (n < 4 || cross(p, q, r) <= 0) return null;
  const ux = p[0] - o[0];
  const uy = p[1] - o[1];
  const vx = q[0] - r[0];
  const vy = q[1] - r[1];
  const det = ux * vy - uy * vx;
  if (!(det > 1e-12 * (Math.hypot(ux, uy) * Math.hypot(vx, vy)))) return null;
  const t = ((r[0] - o[0]) * vy - (r[1] - o[1]) * vx) / det;
  const corner: Point = [o[0] + t * ux, o[1] + t * uy];
  const grown = Math.abs(cross(p, corner, q)) / 2;
  const base = Math.hypot(q[0] - p[0], q[1] - p[1]);
  return { cost: grown, moves: base > 0 ? (2 * grown) / base : 0, corner };
}

function cross(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
}

function height(a: Point, b: Point, p: Point): number {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return long > 0 ? Math.abs(cross(a, b, p)) / long : Math.hypot(p[0] - a[0], p[1] - a[1]);
}
