import { define } from "../define.ts";
import { edgeLabelsDrawn } from "../drawing/piece-drawing.ts";
import { outline } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { EDGE_OF_PIECE, edgeText } from "../pieces/edge-names.ts";
import { edgeLength } from "../pieces/piece.ts";

/**
 * Length of one edge of a piece along the line itself, in the book's unit. The edge is given by its
 * name or by its number, counted from 1 in drawing order; the Drawing writes the names. Straight edges and arcs are exact, curves to
 * about 12 figures. It is the length of the line in the piece: of the sewing line when the piece has no
 * allowances on. Refuses a name or number that the piece does not have, and a name that several edges have. Source: geometry.
 */
export const EDGE_LENGTH = define({
  name: "EDGE_LENGTH",
  summary: "Length of one edge of a pattern piece, measured along its line, curves included.",
  source: "geometry",
  words: "measure edge seam line curve armhole neckline tape on edge",
  takes: {
    piece: { kind: "piece", about: "the pattern piece" },
    edge: EDGE_OF_PIECE,
  },
  returns: "length",
  compute({ piece, edge }, { measure }) {
    return measure(
      "edge_length",
      () => phrase`along ${edgeText(piece, edge)}`,
      edgeLength(piece.edges[edge - 1]!),
    );
  },
  draw: ({ piece, edge }) => [
    ...outline(piece),
    ...edgeLabelsDrawn(piece),
    { kind: "edge", edge: piece.edges[edge - 1]!, role: "seam", shows: "edge_length" },
  ],
  examples: [
    {
      given: { piece: "M 0 0 L 12 0 L 15 4 L 0 4 Z", edge: 2 },
      gives: 5,
      because: "3 across and 4 down is 5 along the slope",
    },
    {
      given: { piece: "M 0 0 L 12 0 L 15 4 L 0 4 Z | edges waist, side, hem, centre back", edge: "hem" },
      gives: 15,
      because: "the hem of this piece is its third edge",
    },
    {
      given: { piece: "M 0 0 L 20 0 A 10 10 0 0 1 0 0 Z", edge: 2 },
      gives: 10 * Math.PI,
      because: "half round a circle of 10 cm radius",
      unit: "cm",
    },
  ],
});
