import { define } from "../define.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * How much to mark from the old stitching line at each edge when `total` of girth is taken in (or let
 * out) over a number of seams, in the book's unit: total / (seams · edges). A plain seam has two
 * edges, a pair of pattern pieces of which only one is altered has one. Source: geometry.
 */
export const TAKE_IN_EACH = define({
  name: "TAKE_IN_EACH",
  summary: "How much to mark at each edge of each seam to take a garment in, or let it out, by a total.",
  source: "geometry",
  words:
    "alter alteration smaller larger divide among seams side seam pinned out waist hip too large loose tighter",
  takes: {
    total: { kind: "length", usual: [0, 60], about: "the girth to lose or to gain in all", from: 0, to: 500 },
    seams: { kind: "count", about: "how many seams share the total", from: 1, to: 60 },
    edges: { kind: "count", about: "edges altered at each seam", from: 1, to: 2, otherwise: 2 },
  },
  returns: "length",
  compute({ total, seams, edges }, { step }) {
    step("each_seam", "total / seams", total / seams);
    return step("each_edge", "total / (seams * edges)", total / (seams * edges));
  },
  draw({ edges }, { each_edge = 0 }) {
    // One seam opened flat: the old stitching down the middle, the new at one side or both.
    if (each_edge === 0) return [];
    const length = 6 * each_edge;
    const sides = edges === 2 ? [-1, 1] : [1];
    return [
      stroke([[0, 0], [0, length]], "stitch", { label: phrase`old stitching` }),
      ...sides.flatMap((side): Shape[] => [
        stroke([[side * each_edge, 0], [side * each_edge, length]], "seam", { label: phrase`new` }),
        dimension([0, length / 2], [side * each_edge, length / 2], { shows: "each_edge" }),
      ]),
    ]; // biome-ignore format: points in pairs
  },
  examples: [
    { given: { total: 2, seams: 4 }, gives: 0.25, because: "eight edges share 2 in" },
    {
      given: { total: 3, seams: 2, edges: 1 },
      gives: 1.5,
      unit: "cm",
      because: "one edge at each of two seams",
    },
  ],
});
