/** Two girths at one level drawn as rings about one another, the way a tape sees them from above. */

import { arc } from "../geometry/strokes.ts";
import { dimension, type Shape } from "./shapes.ts";

interface Ring {
  readonly girth: number;
  readonly label: string;
  /** The step that this girth is. */
  readonly shows?: string;
}

/** Both rings, and the room between them as the step `gap` when there is one to show. */
export function girthRings(inner: Ring, outer: Ring, gap: string | null): Shape[] {
  const ring = ({ girth, ...more }: Ring, role: "guide" | "cut"): Shape => ({
    kind: "edge",
    edge: [arc([0, 0], girth / (2 * Math.PI), -Math.PI / 2, 1.5 * Math.PI)],
    role,
    ...more,
  });
  const shapes = [ring(inner, "guide"), ring(outer, "cut")];
  if (gap !== null) {
    const [r, s] = [inner.girth / (2 * Math.PI), outer.girth / (2 * Math.PI)];
    shapes.push(dimension([r, 0], [s, 0], { shows: gap }));
  }
  return shapes;
}
