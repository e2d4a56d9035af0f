import { define } from "../define.ts";
import { twoSeams } from "../drawing/seam-pair.ts";

/** How much longer edge `a` is than edge `b`, in the book's unit; below zero when it is shorter. Source: geometry. */
export const SEAM_DIFFERENCE = define({
  name: "SEAM_DIFFERENCE",
  summary: "How much longer one of two edges is than the edge it is sewn to.",
  source: "geometry",
  words: "compare seams match ease in gather too long mismatch",
  takes: {
    a: { kind: "length", about: "length of the edge meant to be longer", from: 0, to: 10000 },
    b: { kind: "length", about: "length of the edge it is sewn to", from: 0, to: 10000 },
  },
  returns: "length",
  alike: { "a, b": "the sign of the answer says which is the larger" },
  compute: ({ a, b }, { step }) => step("difference", "a - b", a - b),
  draw: ({ a, b }) => twoSeams(a, b),
  examples: [
    { given: { a: 17.5, b: 17 }, gives: 0.5, because: "17 1/2 is half an inch longer than 17" },
    { given: { a: 40, b: 41.5 }, gives: -1.5, because: "the first edge is short", unit: "cm" },
  ],
});
