/** A dart on the flat: two legs from its ends on the edge to its point. */

import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { dimension, type Shape, showing, stroke } from "./shapes.ts";

/** The dart hanging from a straight edge, its point down at (0, length); what each line shows, by step name. */
export function drawDart(
  intake: number,
  length: number,
  shown: { angle?: string; leg?: string; intake?: string; peak?: number; peakShows?: string } = {},
): Shape[] {
  const [left, right, point]: Point[] = [[-intake / 2, 0], [intake / 2, 0], [0, length]]; // biome-ignore format: points
  const wide = Math.max(intake * 1.5, length / 2);
  const shapes: Shape[] = [
    stroke([[-wide, 0], left!], "seam"),
    stroke([right!, [wide, 0]], "seam"),
    stroke([left!, point!], "stitch", showing(shown.leg)),
    stroke([point!, right!], "stitch"),
    stroke([[0, -(shown.peak ?? 0)], point!], "fold"),
    dimension([-wide, 0], [-wide, length], { label: phrase`length` }),
    dimension(left!, right!, showing(shown.intake)),
  ]; // biome-ignore format: points in pairs
  if (shown.angle) shapes.push({ kind: "angle", at: point!, from: left!, to: right!, shows: shown.angle });
  if (shown.peak) {
    shapes.push(stroke([left!, [0, -shown.peak], right!], "cut"));
    shapes.push(dimension([0, 0], [0, -shown.peak], showing(shown.peakShows)));
  }
  return shapes;
}
