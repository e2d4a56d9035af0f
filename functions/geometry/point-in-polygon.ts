/** Tells whether a point lies inside a polygon, and finds a point inside one. */
import type { Point } from "./strokes.ts";

/** True inside; points on the border may fall either way. Counts the sides that a ray to the right meets. */
export function isInPolygon([x, y]: Point, ring: readonly Point[]): boolean {
  let within = false;
  for (let i = 0; i < ring.length; i += 1) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) within = !within;
  }
  return within;
}

/** A point inside the polygon: the middle of the longest of eleven horizontal chords. */
export function pointInside(points: readonly Point[]): Point {
  const ys = points.map((p) => p[1]);
  const low = Math.min(...ys);
  const high = Math.max(...ys);
  let best: Point = points[0]!;
  let longest = -1;
  for (let k = 1; k < 12; k++) {
    const y = low + ((high - low) * (k + 0.0137)) / 12;
    const cuts: number[] = [];
    for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
      const [ax, ay] = points[j]!;
      const [bx, by] = points[i]!;
      if (ay > y !== by > y) cuts.push(ax + ((y - ay) * (bx - ax)) / (by - ay));
    }
    cuts.sort((s, t) => s - t);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const room = Math.min(cuts[i + 1]! - cuts[i]!, 2 * (high - y), 2 * (y - low));
      if (room > longest) {
        longest = room;
        best = [(cuts[i]! + cuts[i + 1]!) / 2, y];
      }
    }
  }
  return best;
}
