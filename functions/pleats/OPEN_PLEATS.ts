import { define } from "../define.ts";
import {
  insertPleats,
  PLEATS_TO_INSERT,
  requireSimplePleated,
  topStrip,
} from "../drafting/pleat-insertion.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { marksDrawn } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { edgeText } from "../pieces/edge-names.ts";
import { edgeLength, pieceArea } from "../pieces/piece.ts";

/**
 * A piece with pleats opened in it, in the book's unit. The piece given shows how it should look
 * once pleated. It must have four edges, the top first and the hem third; a pleat runs from its
 * place along the top to the same share of the hem. Hidden layers are shaped to meet the seam when
 * folded. Edges keep their names. Fold lines are marked as in PLEATED_PANEL; the piece's own marks are left out. Open
 * pleats before you add allowances. Source: geometry.
 */
export const OPEN_PLEATS = define({
  name: "OPEN_PLEATS",
  summary: "Opens pleats in any four-edged piece, such as box pleats at the back of a shaped skirt section.",
  source: "geometry: the piece folded like paper, cut and unfolded",
  words: "add insert pleat centre back piece pattern knife box inverted kick wedge",
  takes: {
    piece: { kind: "piece", about: "the piece as it should look once pleated, without allowances" },
    ...PLEATS_TO_INSERT,
  },
  returns: "piece",
  alike: {
    "places, fold_depth": "one list of lengths looks like the other",
    "places, hem_fold_depth": "one list of lengths looks like the other",
  },
  compute({ piece, places, fold_depth, hem_fold_depth, style, towards }, { step, measure }) {
    const opened = insertPleats(piece, {
      places: places.filter((place) => place !== null),
      depths: fold_depth,
      hemDepths: hem_fold_depth,
      style,
      towards,
    });
    const top = measure(
      "top",
      () => phrase`length of ${edgeText(piece, 1)} once pleated`,
      edgeLength(piece.edges[0]!),
    );
    const hem = measure(
      "hem",
      () => phrase`length of ${edgeText(piece, 3)} once pleated`,
      edgeLength(piece.edges[2]!),
    );
    measure("taken_at_top", "cloth that the pleats hide along the top", opened.takenTop);
    measure("taken_at_hem", "cloth that the pleats hide along the hem", opened.takenHem);
    step("flat_top", "top + taken_at_top", top + opened.takenTop);
    step("flat_hem", "hem + taken_at_hem", hem + opened.takenHem);
    measure("area", "area of the opened piece", pieceArea(opened.piece));
    return requireSimplePleated(opened.piece);
  },
  draw: (_, __, piece) =>
    typeof piece === "object"
      ? [
          ...drawPattern({ ...piece, marks: [] }, { area: "area" }),
          { kind: "edge", edge: piece.edges[0]!, role: "seam", label: phrase`top`, shows: "flat_top" },
          { kind: "edge", edge: piece.edges[2]!, role: "seam", label: phrase`hem`, shows: "flat_hem" },
          ...marksDrawn(piece),
        ]
      : [],
  strip: (_, __, piece) => (typeof piece === "object" ? topStrip(piece) : { length: 0, marks: [] }),
  examples: [
    {
      given: { piece: "M 0 0 L 20 0 L 20 12 L 0 12 Z", places: [5, 15], fold_depth: [1, 2] },
      gives: { area: 312, width: 26, edges: [26, 12, 26, 12] },
      because: "a rectangle with knife pleats of 1 and 2 in: six inches more",
    },
    {
      given: {
        piece: "M 0 0 L 15 0 L 18 10 L 0 10 Z",
        places: [0],
        fold_depth: [1.5],
        hem_fold_depth: [1.5],
        style: "inverted",
      },
      gives: { edges: [18, 10.44030650891055, 21, 10] },
      because: "half an inverted pleat on the fold at centre back; the side keeps √(3² + 10²)",
    },
  ],
});
