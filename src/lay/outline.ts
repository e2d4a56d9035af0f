/**
 * What a lay needs to know of one outline: its area, its bounds, the outline turned, and whether
 * it crosses itself. Outlines are closed polygons whose last point is not repeated.
 */
import { orient2d } from "robust-predicates";
import type { Point } from "../../functions/geometry/strokes.ts";

export { type Bounds, boundingBox, signedArea } from "../../functions/geometry/strokes.ts";

/** Cosine and sine of a turn in degrees, without rounding dust at the quarter turns. */
export function cosSin(degrees: number): readonly [cos: number, sin: number] {
  switch (wholeTurn(degrees)) {
    case 0:
      return [1, 0];
    case 90:
      return [0, 1];
    case 180:
      return [-1, 0];
    case 270:
      return [0, -1];
  }
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}

/** The same turn between 0 (included) and 360 degrees. */
export function wholeTurn(degrees: number): number {
  const rest = degrees % 360;
  return rest < 0 ? rest + 360 : rest + 0;
}

/** The outline turned about (0, 0) by `degrees`, counter-clockwise, then moved. */
export function turned(outline: readonly Point[], degrees: number, x = 0, y = 0): Point[] {
  const [c, s] = cosSin(degrees);
  return outline.map(([px, py]) => [c * px - s * py + x, s * px + c * py + y] as const);
}

/** The outline without points that repeat their neighbour. */
export function withoutRepeats(outline: readonly Point[]): Point[] {
  return outline.filter((p, i) => {
    const q = outline[(i + outline.length - 1) % outline.length]!;
    return outline.length === 1 || p[0] !== q[0] || p[1] !== q[1];
  });
}

/**
 * The first place where two edges that are not neighbours meet, or an edge turns back on itself;
 * null when none. With `edges`, by their numbers, only these are looked at, each against all others.
 */
export function crossing(outline: readonly Point[], edges?: readonly number[]): Point | null {
  const n = outline.length;
  for (let k = 0; k < (edges ? edges.length : n); k++) {
    const i = edges ? edges[k]! : k;
    const a = outline[i]!;
    const b = outline[(i + 1) % n]!;
    const left = Math.min(a[0], b[0]);
    const right = Math.max(a[0], b[0]);
    const low = Math.min(a[1], b[1]);
    const high = Math.max(a[1], b[1]);
    for (let j = edges ? 0 : i + 1; j < n; j++) {
      if (j === i) continue;
      const c = outline[j]!;
      const d = outline[j + 1 === n ? 0 : j + 1]!;
      if (c[0] > right && d[0] > right) continue;
      if (c[0] < left && d[0] < left) continue;
      if (c[1] > high && d[1] > high) continue;
      if (c[1] < low && d[1] < low) continue;
      if (j === (i + 1) % n || i === (j + 1) % n) {
        // Neighbours share one point; they may not double back along the same line.
        const [tip, p, q] = j === (i + 1) % n ? [b, a, d] : [a, b, c];
        const back = (p[0] - tip[0]) * (q[0] - tip[0]) + (p[1] - tip[1]) * (q[1] - tip[1]) > 0;
        if (n > 2 && back && orient2d(...p, ...tip, ...q) === 0) return tip;
      } else if (properlyMeets(a, b, c, d)) return meeting(a, b, c, d);
    }
  }
  return null;
}

/**
 * Whether two segments cross in their insides. A point of the outline that only touches
 * another edge, as a drawing program may leave it, is not counted as a crossing.
 */
function properlyMeets(a: Point, b: Point, c: Point, d: Point): boolean {
  const p = orient2d(...a, ...b, ...c);
  const q = orient2d(...a, ...b, ...d);
  if ((p > 0 && q > 0) || (p < 0 && q < 0) || p === 0 || q === 0) return false;
  const r = orient2d(...c, ...d, ...a);
  const s = orient2d(...c, ...d, ...b);
  return (r > 0 && s < 0) || (r < 0 && s > 0);
}

function meeting(a: Point, b: Point, c: Point, d: Point): Point {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const vx = d[0] - c[0];
  const vy = d[1] - c[1];
  const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / (ux * vy - uy * vx);
  return [a[0] + t * ux, a[1] + t * uy];
}
