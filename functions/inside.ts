/** Whether a point lies inside a polygon. */
import type { Point } from "./geometry.ts";

/** True inside; points on the border may fall either way. Counts the sides that a ray to the right meets. */
export function inside([x, y]: Point, ring: readonly Point[]): boolean {
  let within = false;
  for (let i = 0; i < ring.length; i += 1) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) within = !within;
  }
  return within;
}
