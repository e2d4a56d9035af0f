import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { dimension } from "../drawing/shapes.ts";
import { normal } from "../geometry/offset.ts";
import { distance, line, type Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { orientation } from "../pieces/allowance.ts";
import { EDGE_OF_PIECE, edgeText } from "../pieces/edge-names.ts";
import { placeAlong } from "../pieces/edges.ts";
import { edgeLength, mark, type Piece } from "../pieces/piece.ts";
import { liesWithin } from "../pieces/within.ts";
import { Refusal } from "../refusal.ts";

/**
 * The piece with a dart marked. The middle of the dart is `at` along an edge from its beginning,
 * its legs are half of `intake` to either side along the edge, and its point is `length` inwards,
 * square to the edge; refuses a point outside the piece. Marks: the two legs and the fold. The outline is not cut into; DART_PEAK
 * gives the height by which the cut edge must rise over the dart. Steps give the legs, the left
 * one first, and the sewn length of the edge. Source: common practice.
 */
export const WITH_DART = define({
  name: "WITH_DART",
  summary: "A pattern piece with a dart marked on one of its edges.",
  source: "common practice",
  words: "dart mark waist bust legs fold point draw",
  takes: {
    piece: { kind: "piece", about: "the pattern piece" },
    edge: EDGE_OF_PIECE,
    at: {
      kind: "length",
      about: "place of the dart's middle along the edge, from the edge's beginning",
      from: 0,
      to: 5000,
    },
    intake: {
      kind: "length",
      about: "width of the dart along the edge, from leg to leg",
      from: 0.1,
      to: 200,
    },
    length: { kind: "length", about: "length of the dart from the edge to its point", from: 0.5, to: 300 },
  },
  returns: "piece",
  usual: ["intake <= length"],
  alike: { "at, length": "the place of a dart and its length are free of each other" },
  compute({ piece, edge, at, intake, length }, { step, measure }) {
    const whole = measure(
      "edge_length",
      () => phrase`along ${edgeText(piece, edge)}`,
      edgeLength(piece.edges[edge - 1]!),
    );
    if (at < intake / 2 || at + intake / 2 > whole * (1 + 1e-9))
      throw new Refusal(
        (say) =>
          phrase`at must be from ${say(intake / 2, whole - intake / 2, at)} to ${say(whole - intake / 2, intake / 2, at)} for the dart to lie on ${edgeText(piece, edge)}, not ${say(at, intake / 2, whole - intake / 2)}`,
      );
    step("sewn_edge", "edge_length - intake", whole - intake);
    const { left, right, middle, point } = dart(piece, edge, at, intake, length);
    if (!liesWithin(piece, [point]))
      throw new Refusal(
        (say) => phrase`length must leave the point of the dart within the piece, not ${say(length)}`,
      );
    measure("first_leg", "first leg, from the edge to the point", distance(left, point));
    measure("second_leg", "second leg, from the point to the edge", distance(point, right));
    return {
      ...piece,
      marks: [
        ...piece.marks,
        mark([line(left, point)], "dart"),
        mark([line(point, right)], "dart"),
        mark([line(middle, point)], "fold"),
      ],
    };
  },
  draw({ piece, edge, at, intake, length }, _, marked) {
    if (typeof marked !== "object") return [];
    const { left, right, point } = dart(piece, edge, at, intake, length);
    return [
      ...drawPattern(marked),
      dimension(left, point, { shows: "first_leg" }),
      dimension(point, right, { shows: "second_leg" }),
    ];
  },
  examples: [
    {
      given: { piece: "M 0 0 L 20 0 L 20 40 L 0 40 Z", edge: 1, at: 8, intake: 3, length: 6 },
      gives: { area: 800, edges: [20, 40, 20, 40] },
      because: "the outline stays as it is",
    },
    {
      given: { piece: "M 0 0 C 6 2 14 2 20 0 L 20 40 L 0 40 Z", edge: 1, at: 10, intake: 3, length: 12 },
      gives: { width: 20, length: 40 },
      because: "on a hollow waist the dart points straight down from its middle",
      unit: "cm",
    },
  ],
});

function dart(piece: Piece, edge: number, at: number, intake: number, length: number) {
  const run = piece.edges[edge - 1]!;
  const { index, share, point: middle } = placeAlong(run, at);
  const [nx, ny] = normal(run[index]!, share, orientation(piece));
  const point: Point = [middle[0] - nx * length, middle[1] - ny * length];
  const left = placeAlong(run, at - intake / 2).point;
  const right = placeAlong(run, at + intake / 2).point;
  return { left, right, middle, point };
}
