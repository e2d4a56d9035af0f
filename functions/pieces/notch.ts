/** Notches: short lines inwards, square to an edge, that show where it meets another. */

import { normal } from "../geometry/offset.ts";
import { line, type Point } from "../geometry/strokes.ts";
import { orientation } from "./allowance.ts";
import { placeAlong } from "./edges.ts";
import { type Mark, mark, type Outline } from "./piece.ts";

/** A notch `size` long on the edge with this number, `at` along it from its beginning. */
export function notchOn(piece: Outline, edge: number, at: number, size: number): Mark {
  const run = piece.edges[edge - 1]!;
  const { index, share, point } = placeAlong(run, at);
  const [nx, ny] = normal(run[index]!, share, orientation(piece));
  const inner: Point = [point[0] - nx * size, point[1] - ny * size];
  return mark([line(point, inner)], "notch");
}
