/** A piece drawn for a maker: outline, marks, names of edges, grain line, its breadth and length. */

import { edgeLabel } from "../pieces/edge-names.ts";
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
    ...edgeLabelsDrawn(piece),
    grainDrawn(piece),
    dimension([left, high + off], [right, high + off], showing(width)),
    dimension([right + off, low], [right + off, high], showing(length)),
  ];
}

/** The name of each edge, or its number where it has none, written at its middle. With `only`, of the edges with these numbers. */
export function edgeLabelsDrawn(piece: Piece, only?: readonly number[]): Shape[] {
  return piece.edges.flatMap((edge, i): Shape[] => {
    if (only && !only.includes(i + 1)) return [];
    return [{ kind: "note", at: edgeMiddle(edge), text: edgeLabel(piece, i + 1) }];
  });
}
