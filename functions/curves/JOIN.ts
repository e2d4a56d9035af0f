import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { joinPieces } from "../pieces/join.ts";
import { pieceArea } from "../pieces/piece.ts";

/**
 * Two pieces laid edge to edge along one seam and drawn as one piece: b is turned and moved, a
 * stays. Edges: a's after the seam, then b's after the seam; the seam becomes a mark. The two
 * edges must lie on each other within 1 mm all along. Seam allowances must not be on. Source: geometry.
 */
export const JOIN = define({
  name: "JOIN",
  summary: "Joins two pattern pieces at a seam into one piece, to draw across the seam or to cut without it.",
  source: "geometry",
  words: "combine merge move lay together close a seam yoke lining facing overlay without seam",
  takes: {
    a: { kind: "piece", about: "the piece that stays" },
    edge_a: {
      kind: "count",
      about: "number of that piece's edge at the seam, counted from 1",
      from: 1,
      to: 5000,
    },
    b: { kind: "piece", about: "the piece that is turned and laid against it" },
    edge_b: {
      kind: "count",
      about: "number of that piece's edge at the seam, counted from 1",
      from: 1,
      to: 5000,
    },
  },
  returns: "piece",
  alike: { "edge_a, edge_b": "the edges of each piece have numbers of their own" },
  compute({ a, edge_a, b, edge_b }, { step, measure, cm }) {
    const joined = joinPieces(a, edge_a, b, edge_b, cm(0.1));
    const one = measure("area_a", "area of piece a", pieceArea(a));
    const other = measure("area_b", "area of piece b", pieceArea(b));
    step("both", "area_a + area_b", one + other);
    return joined;
  },
  draw: (_, __, joined) => (typeof joined === "object" ? drawPattern(joined) : []),
  examples: [
    {
      given: {
        a: "M 0 0 L 10 0 L 10 20 L 0 20 Z",
        edge_a: 2,
        b: "M 0 0 L 6 0 L 9 20 L 0 20 Z",
        edge_b: 4,
      },
      gives: { area: 350, width: 19, length: 20 },
      because: "10 × 20 and (6 + 9)/2 × 20 side by side",
    },
    {
      given: {
        a: "M 0 10 A 10 10 0 0 0 10 0 L 60 0 A 60 60 0 0 1 0 60 Z",
        edge_a: 2,
        b: "M 0 10 A 10 10 0 0 0 10 0 L 60 0 A 60 60 0 0 1 0 60 Z",
        edge_b: 4,
      },
      gives: { area: (Math.PI / 2) * (60 ** 2 - 10 ** 2), width: 60, length: 120 },
      because: "two quarters of a circle skirt make a half",
      unit: "cm",
    },
  ],
});
