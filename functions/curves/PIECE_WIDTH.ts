import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { pieceBounds } from "../pieces/piece.ts";

/**
 * Extent of a piece across the grain, from outermost to outermost point, in the book's unit; curves and
 * arcs at their true extremes. Marks outside the outline are ignored. Source: geometry.
 */
export const PIECE_WIDTH = define({
  name: "PIECE_WIDTH",
  summary: "How far a pattern piece reaches across the grain.",
  source: "geometry",
  words: "breadth wide does it fit the cloth",
  takes: { piece: { kind: "piece", about: "the pattern piece" } },
  returns: "length",
  compute({ piece }, { measure }) {
    const { left, right } = pieceBounds(piece);
    return measure("piece_width", "from outermost to outermost point across the grain", right - left);
  },
  draw: ({ piece }) => drawPattern(piece, { width: "piece_width" }),
  examples: [
    {
      given: { piece: "M 0 0 L 10 0 L 15 20 L -5 20 Z" },
      gives: 20,
      because: "a gore 20 wide at its hem",
    },
    {
      given: { piece: "M 0 0 L 6 0 A 5 5 0 0 1 6 8 L 0 8 Z" },
      gives: 8,
      because: "an arc of radius 5 over a chord of 8 stands out by 5 - 3 = 2",
      unit: "cm",
    },
  ],
});
