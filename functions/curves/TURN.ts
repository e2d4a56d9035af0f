import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { turnPiece } from "../pieces/piece.ts";

/**
 * The piece turned about (0, 0) by an angle in degrees: positive is clockwise on the paper. Edges
 * and marks keep their numbers, lengths and the area; only the direction of the grain changes, so a
 * piece turned by 45 is cut on the bias. Source: geometry.
 */
export const TURN = define({
  name: "TURN",
  summary: "A pattern piece turned on the cloth: by 45 degrees for the bias, by 90 for the cross grain.",
  source: "geometry",
  words: "rotate, lie, cut on the bias, cut on the cross grain",
  takes: {
    piece: { kind: "piece", about: "the pattern piece" },
    degrees: { kind: "angle", about: "how many degrees, clockwise on the paper", from: -360, to: 360 },
  },
  returns: "piece",
  compute: ({ piece, degrees }) => turnPiece(piece, degrees),
  draw: (_, __, turned) => (typeof turned === "object" ? drawPattern(turned) : []),
  examples: [
    {
      given: { piece: "M 0 0 L 8 0 L 8 3 L 0 3 Z", degrees: 90 },
      gives: { width: 3, length: 8, area: 24, edges: [8, 3, 8, 3] },
      because: "a strip 8 wide and 3 long becomes 3 wide and 8 long",
    },
    {
      given: { piece: "M 0 0 L 10 0 L 10 10 L 0 10 Z", degrees: 45 },
      gives: { width: 10 * Math.SQRT2, length: 10 * Math.SQRT2, area: 100 },
      because: "a square on the bias reaches as far as its diagonal",
    },
  ],
});
