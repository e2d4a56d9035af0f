import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";

/** How much longer the first edge is than the second, in the book's unit; below zero when it is shorter. Source: geometry. */
export const SEAM_DIFFERENCE = define({
  name: "SEAM_DIFFERENCE",
  summary: "How much longer one of two edges is than the edge it is sewn to.",
  source: "geometry",
  words: "compare seams match ease in gather too long mismatch",
  takes: {
    first_edge: { kind: "length", about: "length of the edge meant to be longer", from: 0, to: 10000 },
    second_edge: { kind: "length", about: "length of the edge it is sewn to", from: 0, to: 10000 },
  },
  returns: "length",
  alike: { "first_edge, second_edge": "the sign of the answer says which is the larger" },
  compute: ({ first_edge, second_edge }, { step }) =>
    step("difference", "first_edge - second_edge", first_edge - second_edge),
  draw: ({ first_edge, second_edge }) => twoSeams(first_edge, second_edge),
  examples: [
    {
      given: { first_edge: 17.5, second_edge: 17 },
      gives: 0.5,
      because: "17 1/2 is half an inch longer than 17",
    },
    {
      given: { first_edge: 40, second_edge: 41.5 },
      gives: -1.5,
      because: "the first edge is short",
      unit: "cm",
    },
  ],
});
