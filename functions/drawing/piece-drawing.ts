/** A piece drawn for a maker: outline, marks, edge numbers, grain line, its breadth and length. */

import { edgeMiddle } from "../pieces/edges.ts";
import { type Piece, pieceBounds } from "../pieces/piece.ts";
import { grainDrawn } from "./grain-line.ts";
import { dimension, outline, type Shape, showing } from "./shapes.ts";

/** Which steps the dimensions show; a dimension without one carries the plain figure. */
interface Shown {
  readonly area?: string;
  readonly width?: string;
  readonly length?: string;
}

/** The whole pattern piece, dimensioned below and at its right side. */
export function drawPattern(piece: Piece, { area, width, length }: Shown = {}): Shape[] {
  const { left, right, low, high } = pieceBounds(piece);
  const off = Math.max(right - left, high - low) / 12;
  return [
    ...outline(piece, showing(area)),
    ...edgeNumbersDrawn(piece),
    grainDrawn(piece),
    dimension([left, high + off], [right, high + off], showing(width)),
    dimension([right + off, low], [right + off, high], showing(length)),
  ];
}

/** Each edge's name, where it is known, and its number, written at its middle: "centre back, edge 4". */
export function edgeNumbersDrawn(piece: Piece, names: readonly string[] = []): Shape[] {
  return piece.edges.map((edge, i) => {
    const text = [names[i], `edge ${i + 1}`].filter(Boolean).join(", ");
    return { kind: "note", at: edgeMiddle(edge), text };
  });
}
