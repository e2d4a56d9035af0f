/** A circular arc over its chord, drawn with chord, rise and radius. */

import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { dimension, type Shape, showing } from "./shapes.ts";

/** The arc that stands `rise` above its chord; `shown` says which step each dimension shows. */
export function drawArc(
  chord: number,
  rise: number,
  shown: { length?: string; chord?: string; rise?: string; radius?: string },
): Shape[] {
  const [a, b]: [Point, Point] = [[0, 0], [chord, 0]]; // biome-ignore format: two points
  const shapes = [dimension(a, b, { label: phrase`chord`, ...showing(shown.chord) })];
  if (rise < chord / 1e6) return shapes;
  const radius = (chord * chord) / (8 * rise) + rise / 2;
  const centre: Point = [chord / 2, radius - rise];
  const sweep = 4 * Math.atan((2 * rise) / chord);
  return [
    {
      kind: "edge",
      edge: [{ kind: "arc", from: a, to: b, centre, radius, sweep }],
      role: "seam",
      ...showing(shown.length),
    },
    dimension([chord / 2, 0], [chord / 2, -rise], { label: phrase`rise`, ...showing(shown.rise) }),
    // A centre far away is not drawn: the arc would shrink to a line.
    ...(radius < 5 * chord || shown.radius
      ? [dimension(centre, [chord / 2, -rise], { label: phrase`radius`, ...showing(shown.radius) })]
      : []),
    ...shapes,
  ];
}
