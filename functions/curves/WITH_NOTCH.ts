import { define } from "../define.ts";
import { drawPattern } from "../drawing/piece-drawing.ts";
import { dimension } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";
import { EDGE_OF_PIECE, edgeText } from "../pieces/edge-names.ts";
import { edgePart, placeAlong } from "../pieces/edges.ts";
import { notchOn } from "../pieces/notch.ts";
import { edgeLength } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

/**
 * The piece with a notch marked on an edge, `at` along it from its beginning: a short line inwards,
 * square to the edge, 5 mm or a good 3/16 in when `size` is left out. The outline is not cut into.
 * MATCH_MARK finds the place of the notch on the other edge. Source: common practice.
 */
export const WITH_NOTCH = define({
  name: "WITH_NOTCH",
  summary: "A pattern piece with a notch marked on one of its edges.",
  source: "common practice",
  words: "balance mark notch snip match point edge",
  takes: {
    piece: { kind: "piece", about: "the pattern piece" },
    edge: EDGE_OF_PIECE,
    at: {
      kind: "length",
      about: "place of the notch along the edge, from the edge's beginning",
      from: 0,
      to: 5000,
    },
    size: {
      kind: "length",
      usual: [0.2, 2],
      about: "length of the notch",
      from: 0.1,
      to: 5,
      otherwise: { cm: 0.5, in: 3 / 16 },
    },
  },
  returns: "piece",
  compute({ piece, edge, at, size }, context) {
    const whole = context.measure(
      "edge_length",
      () => phrase`along ${edgeText(piece, edge)}`,
      edgeLength(piece.edges[edge - 1]!),
    );
    if (at > whole * (1 + 1e-9))
      throw new Refusal(
        (say) =>
          phrase`at must be at most ${say(whole, at)}, the length of ${edgeText(piece, edge)}, not ${say(at, whole)}`,
      );
    context.step("from_the_end", "edge_length - at", whole - at);
    const long = context.step("notch", "size", size);
    return { ...piece, marks: [...piece.marks, notchOn(piece, edge, at, long)] };
  },
  draw({ piece, edge, at }, _, notched) {
    if (typeof notched !== "object") return [];
    const run = piece.edges[edge - 1]!;
    const from = run[0]!.from;
    const to = placeAlong(run, at).point;
    const walked =
      at > 0
        ? ([{ kind: "edge", edge: edgePart(run, 0, at), role: "guide", label: phrase`at` }] as const)
        : [];
    return [
      ...drawPattern(notched),
      ...walked,
      { kind: "marks", at: [to], mark: "notch" },
      dimension(from, to),
    ];
  },
  examples: [
    {
      given: { piece: "M 0 0 L 20 0 L 20 40 L 0 40 Z", edge: 2, at: 8 },
      gives: { area: 800, edges: [20, 40, 20, 40] },
      because: "the outline stays as it is",
    },
    {
      given: { piece: "M 0 0 L 20 0 A 10 10 0 0 1 0 0 Z", edge: 2, at: 10, size: 0.6 },
      gives: { area: 50 * Math.PI },
      because: "on a curve the notch points to its centre",
      unit: "cm",
    },
  ],
});
