/** The bracket beside an edge that is laid on a fold of the cloth, its two arrows pointing at that edge. */

import { normal } from "../geometry/offset.ts";
import { line, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { orientation } from "../pieces/allowance.ts";
import { placeAlong } from "../pieces/edges.ts";
import { edgeLength, type Piece, pieceBounds } from "../pieces/piece.ts";
import type { Shape } from "./shapes.ts";

/** For the edge with this number, counted from 1. */
export function foldBracket(piece: Piece, number: number): Shape {
  const edge = piece.edges[number - 1]!;
  const length = edgeLength(edge);
  const { left, right, low, high } = pieceBounds(piece);
  const deep = Math.min(length / 8, Math.min(right - left, high - low) / 8);
  const inwards = (share: number, out: number): Point => {
    const { index, share: within, point } = placeAlong(edge, length * share);
    const [nx, ny] = normal(edge[index]!, within, orientation(piece));
    return [point[0] - nx * out, point[1] - ny * out];
  };
  // The arrows end a little before the edge, so that it is seen.
  const gap = deep / 8;
  const corners = [inwards(0.2, gap), inwards(0.2, deep), inwards(0.8, deep), inwards(0.8, gap)];
  return {
    kind: "edge",
    edge: corners.slice(1).map((to, i) => line(corners[i]!, to)),
    role: "fold",
    arrows: true,
    label: phrase`place on the fold`,
  };
}
