/** Two edges that are sewn together, laid side by side. */

import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { dimension, type Shape, stroke } from "./shapes.ts";

/** Both edges straightened from the same end, and between their other ends the difference. */
export function twoSeams(
  a: number,
  b: number,
  more: { names?: readonly [string, string]; differenceShows?: string | undefined } = {},
): Shape[] {
  const [one, other] = more.names ?? [phrase`first edge`, phrase`second edge`];
  const apart = Math.max(a, b) / 10;
  const at = (x: number, row: number): Point => [x, row * apart];
  const shapes: Shape[] = [
    stroke([at(0, 0), at(a, 0)], "seam", { label: one }),
    stroke([at(0, 1), at(b, 1)], "seam", { label: other }),
    dimension(at(0, -1), at(a, -1), { label: one }),
    dimension(at(0, 2), at(b, 2), { label: other }),
  ];
  if (a !== b && more.differenceShows)
    shapes.push(dimension(at(Math.min(a, b), 0.5), at(Math.max(a, b), 0.5), { shows: more.differenceShows }));
  return shapes;
}
