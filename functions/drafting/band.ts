/** Bands: straight strips folded along the middle, such as waistbands, cuffs and bindings. */

import type { CallContext, StepValues } from "../define.ts";
import { grainDrawn } from "../drawing/grain-line.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { dimension, outline, type Shape } from "../drawing/shapes.ts";
import { line, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { mark, type Piece, polygon } from "../pieces/piece.ts";

/**
 * A band `long` across and twice `depth` high, its fold marked along the middle and `overlap` at
 * its right end marked by a placement line. Edge 1 is sewn on, edge 3 is turned in behind it.
 */
function foldedBand(long: number, depth: number, overlap: number): Piece {
  const at = (x: number, y: number): Point => [x, y];
  const marks = [mark([line(at(0, depth), at(long, depth))], "fold")];
  if (overlap > 0)
    marks.push(mark([line(at(long - overlap, 0), at(long - overlap, 2 * depth))], "placement"));
  const corners = [at(0, 0), at(long, 0), at(long, 2 * depth), at(0, 2 * depth)];
  return polygon(corners, ["sewn edge", "right end", "inner edge", "left end"], marks);
}

/** What a cuff and a waistband have in common: the girth they go round, and the rest of their size. */
interface BandSize {
  readonly girth: number;
  readonly depth: number;
  readonly ease: number;
  readonly overlap: number;
}

/** A band that goes round a girth. `girthName` is the argument with the girth; notes the steps "length" and "width". */
export function bandRound(
  girthName: string,
  { girth, depth, ease, overlap }: BandSize,
  { step }: Pick<CallContext, "step">,
): Piece {
  const long = step("length", `${girthName} + ease + overlap`, girth + ease + overlap);
  step("width", "2 * depth", 2 * depth);
  return foldedBand(long, depth, overlap);
}

/** The band with its overlap, and with its length and its height, which show the steps "length" and "width". */
export function drawBand(
  { depth, overlap }: { readonly depth: number; readonly overlap: number },
  { length: long = 0 }: StepValues,
  piece: number | string | Piece,
): Shape[] {
  if (typeof piece !== "object") return [];
  const off = Math.max(long / 20, depth / 3);
  const shapes: Shape[] = [
    ...outline(piece),
    grainDrawn(piece),
    ...edgeLabelsDrawn(piece),
    dimension([0, 2 * depth + off], [long, 2 * depth + off], { shows: "length" }),
    dimension([long + off, 0], [long + off, 2 * depth], { shows: "width" }),
    dimension([-off, 0], [-off, depth], { label: phrase`depth` }),
  ];
  if (overlap > 0)
    shapes.push(dimension([long - overlap, -off / 2], [long, -off / 2], { label: phrase`overlap` }));
  return shapes;
}
