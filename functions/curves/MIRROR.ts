import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { mirrorPiece } from "../pieces/piece.ts";

/**
 * The other half of a pair: left becomes right, and the direction of the grain stays. Edges keep
 * their number, order and length. Mirrored about x = 0. Source: geometry.
 */
export const MIRROR = define({
  name: "MIRROR",
  summary: "Mirrors a pattern piece, such as a left front into a right front.",
  source: "geometry",
  words: "flip reflect left right pair opposite",
  takes: { piece: { kind: "piece", about: "the pattern piece" } },
  returns: "piece",
  compute: ({ piece }) => mirrorPiece(piece),
  draw: (_, __, mirrored) => (typeof mirrored === "object" ? drawPattern(mirrored) : []),
  examples: [
    {
      given: { piece: "M 0 0 L 6 0 L 9 4 L 0 4 Z" },
      gives: { width: 9, length: 4, area: 30, edges: [6, 5, 9, 4] },
      because: "a mirrored piece keeps its area and each edge its length",
    },
  ],
});
