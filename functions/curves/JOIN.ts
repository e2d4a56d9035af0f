import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { joinPieces } from "../pieces/join.ts";
import { pieceArea } from "../pieces/piece.ts";

/**
 * Two pieces laid edge to edge along one seam and drawn as one piece: the second is turned and moved,
 * the first stays. Edges: the first piece's after the seam, then the second's after the seam, each with
 * its name; the seam becomes a guide line. The two
 * edges must lie on each other within 1 mm all along. Seam allowances must not be on. Source: geometry.
 */
export const JOIN = define({
  name: "JOIN",
  summary: "Joins two pattern pieces at a seam into one piece, to draw across the seam or to cut without it.",
  source: "geometry",
  words: "combine merge move lay together close a seam yoke lining facing overlay without seam",
  takes: {
    first_piece: { kind: "piece", about: "the piece that stays" },
    first_edge: { kind: "edge", of: "first_piece", about: "its edge at the seam, by name or number" },
    second_piece: { kind: "piece", about: "the piece that is turned and laid against it" },
    second_edge: { kind: "edge", of: "second_piece", about: "its edge at the seam, by name or number" },
  },
  returns: "piece",
  compute({ first_piece, first_edge, second_piece, second_edge }, { step, measure, cm }) {
    const joined = joinPieces(first_piece, first_edge, second_piece, second_edge, cm(0.1));
    const first = measure("first_area", "area of the first piece", pieceArea(first_piece));
    const second = measure("second_area", "area of the second piece", pieceArea(second_piece));
    step("both", "first_area + second_area", first + second);
    return joined;
  },
  draw: (_, __, joined) => (typeof joined === "object" ? drawPattern(joined) : []),
  examples: [
    {
      given: {
        first_piece: "M 0 0 L 10 0 L 10 20 L 0 20 Z",
        first_edge: 2,
        second_piece: "M 0 0 L 6 0 L 9 20 L 0 20 Z",
        second_edge: 4,
      },
      gives: { area: 350, width: 19, length: 20 },
      because: "10 × 20 and (6 + 9)/2 × 20 side by side",
    },
    {
      given: {
        first_piece: "M 0 10 A 10 10 0 0 0 10 0 L 60 0 A 60 60 0 0 1 0 60 Z",
        first_edge: 2,
        second_piece: "M 0 10 A 10 10 0 0 0 10 0 L 60 0 A 60 60 0 0 1 0 60 Z",
        second_edge: 4,
      },
      gives: { area: (Math.PI / 2) * (60 ** 2 - 10 ** 2), width: 60, length: 120 },
      because: "two quarters of a circle skirt make a half",
      unit: "cm",
    },
  ],
});
