import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { pieceBounds } from "../pieces/piece.ts";

/**
 * Extent of a piece along the grain, from outermost to outermost point, in the book's unit; curves and
 * arcs at their true extremes. Marks outside the outline are ignored. Source: geometry.
 */
export const PIECE_LENGTH = define({
  name: "PIECE_LENGTH",
  summary: "How far a pattern piece reaches along the grain.",
  source: "geometry",
  words: "height long deep how long",
  takes: { piece: { kind: "piece", about: "the pattern piece" } },
  returns: "length",
  compute({ piece }, { measure }) {
    const { low, high } = pieceBounds(piece);
    return measure("piece_length", "from outermost to outermost point along the grain", high - low);
  },
  draw: ({ piece }) => drawPattern(piece, { length: "piece_length" }),
  examples: [
    {
      given: { piece: "M 0 0 L 10 0 L 15 20 L -5 20 Z" },
      gives: 20,
      because: "a gore 20 long, whatever the slope of its sides",
    },
    {
      given: { piece: "M -3 4 A 5 5 0 0 1 3 4 L 3 9 L -3 9 Z" },
      gives: 6,
      because: "an arc of radius 5 over a chord of 6 stands out by 5 - 4 = 1 above sides of 5",
      unit: "cm",
    },
  ],
});
