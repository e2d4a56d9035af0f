/**
 * The no-fit polygon of two outlines: all offsets at which the second, moved by the offset,
 * overlaps the first where it is. Its border are the offsets at which they touch. (Art 1966;
 * here as the Minkowski sum of the first and the second turned by half a turn.)
 */
import { FillRule, minkowskiSum, union } from "clipper2-ts";
import type { Point } from "../../functions/geometry.ts";
import { boundsOf, signedArea } from "./outline.ts";

/** Rings of the no-fit polygon: outer ones counter-clockwise, holes clockwise. Both outlines counter-clockwise. */
export function noFit(a: readonly Point[], b: readonly Point[]): Point[][] {
  if (isConvex(a) && isConvex(b)) return [convexNoFit(a, b)];
  const scale = stepsFor(a, b);
  const own = a.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) }));
  const other = b.map(([x, y]) => ({ x: Math.round(-x * scale), y: Math.round(-y * scale) }));
  // The sum sweeps border over border; each outline set on one corner of the other fills the middle.
  const sums = minkowskiSum(own, other, true);
  sums.push(own.map(({ x, y }) => ({ x: x + other[0]!.x, y: y + other[0]!.y })));
  sums.push(other.map(({ x, y }) => ({ x: x + own[0]!.x, y: y + own[0]!.y })));
  const rings = union(sums, FillRule.NonZero).map((ring) =>
    ring.map(({ x, y }) => [x / scale, y / scale] as const),
  );
  const width = 2 ** 26 / scale;
  return rings.filter((ring) => ring.length > 2 && !isNeedle(ring, width));
}

/** Powers of two, so that whole and half inches stay exact: some 2^26 steps across the larger outline. */
function stepsFor(a: readonly Point[], b: readonly Point[]): number {
  let most = 0;
  for (const outline of [a, b]) {
    const { left, right, low, high } = boundsOf(outline);
    most = Math.max(
      most,
      right - left,
      high - low,
      Math.abs(left),
      Math.abs(right),
      Math.abs(low),
      Math.abs(high),
    );
  }
  return 2 ** Math.floor(26 - Math.log2(most));
}

/** Rounding leaves holes as thin as a needle, where nothing fits: they are closed. */
function isNeedle(ring: readonly Point[], width: number): boolean {
  const area = signedArea(ring);
  let around = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    around += Math.hypot(q[0] - p[0], q[1] - p[1]);
  });
  return Math.abs(area) < 1e-6 * width * around;
}

function isConvex(outline: readonly Point[]): boolean {
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const a = outline[i]!;
    const b = outline[(i + 1) % n]!;
    const c = outline[(i + 2) % n]!;
    if ((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) < 0) return false;
  }
  return true;
}

/** Two convex outlines: their edges, b's turned by half a turn, joined in order of direction. */
function convexNoFit(a: readonly Point[], b: readonly Point[]): Point[] {
  const half = b.map(([x, y]) => [-x, -y] as const);
  const lowest = (ring: readonly Point[]) =>
    ring.reduce((k, p, i) => (p[1] < ring[k]![1] || (p[1] === ring[k]![1] && p[0] < ring[k]![0]) ? i : k), 0);
  let i = lowest(a);
  let j = lowest(half);
  let [x, y] = [a[i]![0] + half[j]![0], a[i]![1] + half[j]![1]];
  const ring: Point[] = [];
  for (let da = 0, db = 0; da < a.length || db < half.length; ) {
    ring.push([x, y]);
    const p = a[i]!;
    const q = a[(i + 1) % a.length]!;
    const r = half[j]!;
    const s = half[(j + 1) % half.length]!;
    const side = (q[0] - p[0]) * (s[1] - r[1]) - (q[1] - p[1]) * (s[0] - r[0]);
    const takeA = db === half.length || (da < a.length && side >= 0);
    const takeB = da === a.length || (db < half.length && side <= 0);
    if (takeA) {
      i = (i + 1) % a.length;
      da++;
    }
    if (takeB) {
      j = (j + 1) % half.length;
      db++;
    }
    // From the two corners each time, so that rounding does not add up.
    x = a[i]![0] + half[j]![0];
    y = a[i]![1] + half[j]![1];
  }
  return ring;
}
