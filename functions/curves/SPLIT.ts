import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { phrase } from "../phrase.ts";
import { edgeText } from "../pieces/edge-names.ts";
import { edgeLength, type Piece, pieceArea } from "../pieces/piece.ts";
import { partBetween } from "../pieces/split.ts";
import { Refusal } from "../refusal.ts";

/**
 * One of the two parts of a piece cut by a straight line from a place on one edge to a place on
 * another. Part 1 follows the outline from the first place to the second in drawing order, part 2
 * the rest; the cut is the last edge of either, and is named so. The others keep their names. No allowance is added at the cut: use
 * WITH_ALLOWANCE. Refuses a cut that leaves the piece. Source: geometry.
 */
export const SPLIT = define({
  name: "SPLIT",
  summary:
    "One part of a pattern piece cut in two along a straight line: a yoke, a panel, a join where the cloth is narrow.",
  source: "geometry",
  words: "cut apart divide yoke panel seam style line piecing join",
  takes: {
    piece: { kind: "piece", about: "the pattern piece" },
    edge: { kind: "edge", of: "piece", about: "the edge where the cut begins, by its name or number" },
    at: { kind: "length", about: "how far along that edge the cut begins", from: 0, to: 5000 },
    to_edge: { kind: "edge", of: "piece", about: "the edge where the cut ends, by its name or number" },
    to_at: { kind: "length", about: "how far along that edge the cut ends", from: 0, to: 5000 },
    part: {
      kind: "count",
      about: "1 for the part that follows the outline from the first place, 2 for the rest",
      from: 1,
      to: 2,
      otherwise: 1,
    },
  },
  returns: "piece",
  alike: { "at, to_at": "a cut may slant either way" },
  compute({ piece, edge, at, to_edge, to_at, part }, { step, measure }) {
    const start = { edge, at: onEdge(piece, edge, at, "at") };
    const end = { edge: to_edge, at: onEdge(piece, to_edge, to_at, "to_at") };
    if (edge === to_edge)
      throw new Refusal(phrase`to_edge must be a different edge from edge, not ${edgeText(piece, edge)} too`);
    const [one, other] = part === 1 ? [start, end] : [end, start];
    const cut = partBetween(piece, one, other);
    const whole = measure("whole_area", "area of the piece", pieceArea(piece));
    const area = measure("area", "area of this part", pieceArea(cut));
    step("rest_area", "whole_area - area", whole - area);
    return cut;
  },
  draw: ({ piece }, _, part) =>
    typeof part === "object"
      ? [
          { kind: "outline", piece: { ...piece, marks: [] }, label: phrase`whole`, context: true },
          ...drawPattern(part, { area: "area" }),
        ]
      : [],
  examples: [
    {
      given: { piece: "M 0 0 L 20 0 L 20 40 L 0 40 Z", edge: 2, at: 10, to_edge: 4, to_at: 30, part: 2 },
      gives: { width: 20, length: 10, area: 200 },
      because: "a yoke 10 deep off the top: edge 4 runs upwards, 30 along it is 10 from the top",
    },
    {
      given: { piece: "M 0 0 L 20 0 L 20 40 L 0 40 Z", edge: 1, at: 8, to_edge: 3, to_at: 8 },
      gives: { width: 12, length: 40, area: 400, edges: [12, 40, 8, Math.hypot(4, 40)] },
      because: "a slanting cut through the middle halves it",
      unit: "cm",
    },
  ],
});

/** The distance along an edge, checked against its length. */
function onEdge(piece: Piece, edge: number, at: number, argument: string): number {
  const length = edgeLength(piece.edges[edge - 1]!);
  if (at > length * (1 + 1e-9))
    throw new Refusal(
      (say) =>
        phrase`${argument} must be at most ${say(length, at)}, the length of ${edgeText(piece, edge)}, not ${say(at, length)}`,
    );
  return Math.min(at, length);
}
