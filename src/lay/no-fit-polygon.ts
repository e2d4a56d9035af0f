/**
 * The no-fit polygon of two outlines: all offsets at which the second, moved by the offset,
 * overlaps the first where it is. Its border are the offsets at which they touch. (Art 1966;
 * here as the Minkowski sum of the first and the second turned by half a turn.)
 *
 * The sum is found by convolution (Guibas, Ramshaw and Stolfi 1983): each edge of one outline is
 * set on those corners of the other whose two edges have its direction between them. These edges
 * close into cycles, and what the cycles wind round is the sum.
 */
import { FillRule, type Path64, trimCollinear, union } from "clipper2-ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import { boundingBox, signedArea } from "./outline.ts";

/** Rings of the no-fit polygon: outer ones counter-clockwise, holes clockwise. Both outlines counter-clockwise. */
export function noFitPolygon(a: readonly Point[], b: readonly Point[]): Point[][] {
  const scale = stepsFor(a, b);
  const own = cornersOf(a, scale);
  const other = cornersOf(b, -scale);
  // Where many edges lie on one line a union can leave part of its border inside: the second mends it.
  const rings = union(union(cycles(own, other), FillRule.Positive), FillRule.Positive);
  const width = 2 ** 25 / scale;
  return rings
    .map((ring) => trimCollinear(ring).map(({ x, y }) => [x / scale, y / scale] as const))
    .filter((ring) => ring.length > 2 && !isNeedle(ring, width));
}

/** Powers of two, so that whole and half inches stay exact: at most 2^25 steps to the furthest point. */
function stepsFor(a: readonly Point[], b: readonly Point[]): number {
  let most = 0;
  for (const outline of [a, b]) {
    const { left, right, low, high } = boundingBox(outline);
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
  return 2 ** Math.floor(25 - Math.log2(most));
}

interface Corners {
  readonly n: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Direction of the edge that leaves each corner. */
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  /** Whether the outline turns left at the corner. */
  readonly left: boolean[];
}

/** The outline in whole steps, without points on straight lines. */
function cornersOf(outline: readonly Point[], scale: number): Corners {
  let points = outline.map(([x, y]) => [Math.round(x * scale), Math.round(y * scale)] as const);
  for (let before = -1; before !== points.length; ) {
    before = points.length;
    points = points.filter((p, i) => {
      const o = points[(i + points.length - 1) % points.length]!;
      const q = points[(i + 1) % points.length]!;
      return (p[0] - o[0]) * (q[1] - p[1]) !== (p[1] - o[1]) * (q[0] - p[0]);
    });
  }
  const n = points.length;
  const at = (i: number) => points[i % n]!;
  const dx = Float64Array.from(points, (p, i) => at(i + 1)[0] - p[0]);
  const dy = Float64Array.from(points, (p, i) => at(i + 1)[1] - p[1]);
  const left = points.map((_, i) => {
    const before = (i + n - 1) % n;
    return dx[before]! * dy[i]! - dy[before]! * dx[i]! > 0;
  });
  return {
    n,
    x: Float64Array.from(points, (p) => p[0]),
    y: Float64Array.from(points, (p) => p[1]),
    dx,
    dy,
    left,
  };
}

/** The closed cycles of the convolution of two outlines. */
function cycles(a: Corners, b: Corners): Path64[] {
  const { n } = a;
  const m = b.n;
  // Steps from state (corner of a, corner of b) to state, as linked lists per state.
  const first = new Int32Array(n * m).fill(-1);
  const next: number[] = [];
  const target: number[] = [];
  const step = (from: number, to: number) => {
    next.push(first[from]!);
    target.push(to);
    first[from] = next.length - 1;
  };
  // Where directions are equal, b's count as turned a trace further to the left.
  for (let i = 0; i < n; i++) {
    const before = (i + n - 1) % n;
    for (let j = 0; j < m; j++) {
      if (!isBetween(a, before, i, a.left[i]!, b.dx[j]!, b.dy[j]!, true)) continue;
      const [from, to] = [i * m + j, i * m + ((j + 1) % m)];
      if (a.left[i]!) step(from, to);
      else step(to, from);
    }
  }
  for (let j = 0; j < m; j++) {
    const before = (j + m - 1) % m;
    for (let i = 0; i < n; i++) {
      if (!isBetween(b, before, j, b.left[j]!, a.dx[i]!, a.dy[i]!, false)) continue;
      const [from, to] = [i * m + j, ((i + 1) % n) * m + j];
      if (b.left[j]!) step(from, to);
      else step(to, from);
    }
  }
  const paths: Path64[] = [];
  for (let start = 0; start < n * m; start++)
    while (first[start] !== -1) {
      const path: Path64 = [];
      for (let state = start; first[state] !== -1; ) {
        const i = Math.floor(state / m);
        const j = state % m;
        path.push({ x: a.x[i]! + b.x[j]!, y: a.y[i]! + b.y[j]! });
        const taken = first[state]!;
        first[state] = next[taken]!;
        state = target[taken]!;
      }
      paths.push(path);
    }
  return paths;
}

/**
 * Whether direction (x, y) lies between those of the edges `before` and `after` a corner, on the
 * side the outline turns; equal to the nearer right of the two counts with `closedRight`, to the
 * left one without.
 */
function isBetween(
  { dx, dy }: Corners,
  before: number,
  after: number,
  left: boolean,
  x: number,
  y: number,
  closedRight: boolean,
): boolean {
  const [right, far] = left ? [before, after] : [after, before];
  const fromRight = dx[right]! * y - dy[right]! * x;
  const toFar = x * dy[far]! - y * dx[far]!;
  return closedRight ? fromRight >= 0 && toFar > 0 : fromRight > 0 && toFar >= 0;
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
