import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { pieceArea } from "../pieces/piece.ts";

/**
 * Area inside the outline of a piece, in square units of the book. Exact for straight edges, arcs
 * and cubic curves (Green's theorem round the outline). Marks are ignored. Source: geometry.
 */
export const PIECE_AREA = define({
  name: "PIECE_AREA",
  summary: "Area of cloth inside the outline of a pattern piece.",
  source: "geometry",
  words: "surface square how much cloth weight of a piece",
  takes: { piece: { kind: "piece", about: "the pattern piece" } },
  returns: "area",
  compute: ({ piece }, { measure }) => measure("area", "area inside the outline", pieceArea(piece)),
  draw: ({ piece }) => drawPattern(piece, { area: "area" }),
  examples: [
    {
      given: { piece: "M 0 0 L 10 0 L 15 20 L -5 20 Z" },
      gives: 300,
      because: "a gore 10 wide at the top and 20 at the hem, 20 long: (10 + 20)/2 × 20",
    },
    {
      given: { piece: "M 0 10 A 10 10 0 0 0 10 0 L 30 0 A 30 30 0 0 1 0 30 Z" },
      gives: 200 * Math.PI,
      because: "a quarter of a circle skirt: a quarter of the ring between radii 10 and 30 cm",
      unit: "cm",
    },
  ],
});
