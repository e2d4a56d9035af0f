/**
 * Slides a laid outline straight towards the beginning of the cloth, or down to its lower
 * selvedge, until it touches another: the exact last step after the slabs have found a place.
 */
import type { Point } from "../../functions/geometry/strokes.ts";

/** The edges of an outline that look to the two ends of one axis, as u, v, u, v with u along the slide. */
export interface Faces {
  readonly front: Float64Array;
  readonly back: Float64Array;
  /** Least and greatest v of each. */
  readonly frontAcross: readonly [number, number];
  readonly backAcross: readonly [number, number];
  /** For each back edge the greatest v up to its end and those of the edges before it. */
  readonly backReach: Float64Array;
}

/** Faces of a counter-clockwise outline for slides along x ("x") or along y ("y"). */
export function facesOf(outline: readonly Point[], axis: "x" | "y"): Faces {
  const front: number[] = [];
  const back: number[] = [];
  const n = outline.length;
  for (let i = 0; i < n; i++) {
    const p = outline[i]!;
    const q = outline[i + 1 === n ? 0 : i + 1]!;
    // Seen along the slide, an edge is kept with its v growing.
    const rise = axis === "x" ? q[1] - p[1] : p[0] - q[0];
    if (rise !== 0) (rise > 0 ? back : front).push(i);
  }
  // By where they begin across the slide, so that a search through them can end early.
  const [u, v] = axis === "x" ? ([0, 1] as const) : ([1, 0] as const);
  const list = (edges: readonly number[]): Float64Array => {
    const starts = new Float64Array(n);
    for (const i of edges) starts[i] = Math.min(outline[i]![v], outline[i + 1 === n ? 0 : i + 1]![v]);
    const flat = new Float64Array(4 * edges.length);
    edges
      .toSorted((i, j) => starts[i]! - starts[j]!)
      .forEach((i, at) => {
        const p = outline[i]!;
        const q = outline[i + 1 === n ? 0 : i + 1]!;
        const [a, b] = p[v] <= q[v] ? [p, q] : [q, p];
        flat.set([a[u], a[v], b[u], b[v]], 4 * at);
      });
    return flat;
  };
  const [ahead, behind] = [list(front), list(back)];
  const reach = new Float64Array(back.length);
  let most = -Infinity;
  for (let k = 0; k < reach.length; k++) {
    most = Math.max(most, behind[4 * k + 3]!);
    reach[k] = most;
  }
  return {
    front: ahead,
    back: behind,
    frontAcross: across(ahead),
    backAcross: across(behind),
    backReach: reach,
  };
}

function across(edges: Float64Array): [number, number] {
  let high = -Infinity;
  for (let k = 3; k < edges.length; k += 4) high = Math.max(high, edges[k]!);
  return [edges[1] ?? Infinity, high];
}

/**
 * How far the mover may slide towards smaller u before its front meets the back of another, at
 * most `room`. `du` and `dv` say where the mover lies as seen from the other. Faces that share
 * less than `eps` across do not meet.
 */
export function slideRoom(
  { front, frontAcross: [frontLow, frontHigh] }: Faces,
  { back, backAcross: [backLow, backHigh], backReach }: Faces,
  du: number,
  dv: number,
  room: number,
  eps: number,
): number {
  if (frontLow + dv >= backHigh - eps || frontHigh + dv <= backLow + eps) return room;
  // Back edges before this one end before any front edge that is still to come begins.
  let first = 0;
  for (let i = 0; i < front.length; i += 4) {
    const au = front[i]! + du;
    const av = front[i + 1]! + dv;
    const bu = front[i + 2]! + du;
    const bv = front[i + 3]! + dv;
    while (first < back.length && backReach[first >> 2]! - av <= eps) first += 4;
    if (first === back.length) break;
    const slope = (bu - au) / (bv - av);
    const least = Math.min(au, bu);
    for (let j = first; j < back.length; j += 4) {
      const cv = back[j + 1]!;
      if (cv >= bv - eps) break;
      const ev = back[j + 3]!;
      const from = Math.max(cv, av);
      const to = Math.min(ev, bv);
      if (to - from <= eps) continue;
      const cu = back[j]!;
      const eu = back[j + 2]!;
      if (least - Math.max(cu, eu) >= room) continue;
      const turn = (eu - cu) / (ev - cv);
      const g = au + (from - av) * slope - (cu + (from - cv) * turn);
      const h = au + (to - av) * slope - (cu + (to - cv) * turn);
      // Apart the other way round; two that touch along an edge may seem so by rounding.
      if (g + h < -eps) continue;
      const gap = Math.min(g, h);
      if (gap < room) room = Math.max(gap, 0);
    }
  }
  return room;
}
