/**
 * Does a closed polygon cross itself? A sweep over the segments sorted along the longer side of
 * the outline, so that only those that lie over one another are compared.
 *
 * Crossing through a corner counts, and so does running a second time along a stretch in the same
 * direction. Touching does not, nor does a slit: a line cut in and run back along.
 */
import { boundingBox, type Point } from "./strokes.ts";

/** A place where the outline crosses itself, or null. Distances below a billionth of its size count as 0. */
export function selfCrossing(outline: readonly Point[]): Point | null {
  const box = boundingBox(outline);
  const slack = 1e-9 * Math.max(box.right - box.left, box.high - box.low);
  const points = withoutRepeats(outline, slack);
  const n = points.length;
  const axis = box.right - box.left >= box.high - box.low ? 0 : 1;
  const other = 1 - axis;
  const order = new Uint32Array(n);
  const [first, last, least, most] = [0, 1, 2, 3].map(() => new Float64Array(n)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  points.forEach((a, i) => {
    const b = points[i + 1 === n ? 0 : i + 1]!;
    order[i] = i;
    first[i] = Math.min(a[axis]!, b[axis]!);
    last[i] = Math.max(a[axis]!, b[axis]!);
    least[i] = Math.min(a[other]!, b[other]!);
    most[i] = Math.max(a[other]!, b[other]!);
  });
  order.sort((i, j) => first[i]! - first[j]!);
  for (let k = 0; k < n; k += 1) {
    const i = order[k]!;
    const end = last[i]! + slack;
    for (let l = k + 1; l < n; l += 1) {
      const j = order[l]!;
      if (first[j]! > end) break;
      if (least[j]! > most[i]! + slack || most[j]! < least[i]! - slack) continue;
      const place = segmentsCross(points, i, j, slack);
      if (place) return place;
    }
  }
  return null;
}

function withoutRepeats(outline: readonly Point[], slack: number): Point[] {
  const kept: Point[] = [];
  const near = (p: Point, q: Point) => Math.abs(p[0] - q[0]) <= slack && Math.abs(p[1] - q[1]) <= slack;
  for (const point of outline) if (kept.length === 0 || !near(point, kept.at(-1)!)) kept.push(point);
  while (kept.length > 1 && near(kept[0]!, kept.at(-1)!)) kept.pop();
  return kept;
}

/** How far `p` lies beside the line from a to b, signed. */
function signedDistance(a: Point, b: Point, p: Point): number {
  const [rx, ry] = [b[0] - a[0], b[1] - a[1]];
  return (rx * (p[1] - a[1]) - ry * (p[0] - a[0])) / Math.sqrt(rx * rx + ry * ry);
}

/** Where segment i of the ring crosses segment j, or null; neighbours only share their corner. */
function segmentsCross(points: readonly Point[], i: number, j: number, slack: number): Point | null {
  const n = points.length;
  const [a, b] = [points[i]!, points[(i + 1) % n]!];
  const [c, d] = [points[j]!, points[(j + 1) % n]!];
  if ((i + 1) % n === j || (j + 1) % n === i) return null;
  const [oc, od] = [signedDistance(a, b, c), signedDistance(a, b, d)];
  if ((oc > slack && od > slack) || (oc < -slack && od < -slack)) return null;
  const [oa, ob] = [signedDistance(c, d, a), signedDistance(c, d, b)];
  if ((oa > slack && ob > slack) || (oa < -slack && ob < -slack)) return null;
  const touches = [oa, ob, oc, od].map((far) => Math.abs(far) <= slack);
  if (!touches.includes(true)) {
    const share = oc / (oc - od);
    return [c[0] + (d[0] - c[0]) * share, c[1] + (d[1] - c[1]) * share];
  }
  if (touches[2] && touches[3]) return alongside(a, b, c, d, slack);
  const corner = touches[0] ? i : touches[1] ? (i + 1) % n : touches[2] ? j : (j + 1) % n;
  return passesThrough(points, corner, touches[0] || touches[1] ? j : i, slack);
}

/** Two segments on one line: they cross when they run the same way along a shared stretch. */
function alongside(a: Point, b: Point, c: Point, d: Point, slack: number): Point | null {
  const [rx, ry] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(rx, ry);
  const on = (p: Point) => ((p[0] - a[0]) * rx + (p[1] - a[1]) * ry) / length;
  const [start, end] = [on(c), on(d)];
  const [from, to] = [Math.max(0, Math.min(start, end)), Math.min(length, Math.max(start, end))];
  if (to - from <= 2 * slack || end < start) return null;
  const share = (from + to) / 2 / length;
  return [a[0] + rx * share, a[1] + ry * share];
}

/** Does the outline at corner `k` pass from one side to the other of the outline at segment `m`, which it touches? */
function passesThrough(points: readonly Point[], k: number, m: number, slack: number): Point | null {
  const n = points.length;
  const p = points[k]!;
  const at = (i: number): Point => points[(i + n) % n]!;
  const near = (q: Point) => Math.hypot(q[0] - p[0], q[1] - p[1]) <= 4 * slack;
  const [start, end] = [at(m), at(m + 1)];
  // The corner may lie beyond the segment's ends, in line with it.
  const reach = (start[0] - p[0]) * (end[0] - p[0]) + (start[1] - p[1]) * (end[1] - p[1]);
  if (!near(start) && !near(end) && reach > 0) return null;
  const one: Point = near(start) ? at(m - 1) : start;
  const other: Point = near(end) ? at(m + 2) : end;
  const sides = [one, other].map((q) => inTurn(p, at(k - 1), at(k + 1), q));
  return sides[0] !== null && sides[1] !== null && sides[0] !== sides[1] ? p : null;
}

/** Is the way from p to q within the turn from the way to a, towards +y from +x, to the way to b? Null on its border. */
function inTurn(p: Point, a: Point, b: Point, q: Point): boolean | null {
  const way = ([x, y]: Point): Point => [x - p[0], y - p[1]];
  const cross = (u: Point, v: Point) => u[0] * v[1] - u[1] * v[0];
  const [u, v, w] = [way(a), way(b), way(q)];
  const same = (r: Point) =>
    Math.abs(cross(r, w)) <= 1e-9 * Math.hypot(...r) * Math.hypot(...w) && r[0] * w[0] + r[1] * w[1] > 0;
  if (same(u) || same(v)) return null;
  const [after, before] = [cross(u, w) > 0, cross(w, v) > 0];
  return cross(u, v) > 0 ? after && before : after || before;
}
