import { define } from "../define.ts";
import { drawHem } from "../drawing/hem-section.ts";

/**
 * Cloth below the fold of a hem, in the book's unit: the hem and the width turned in under it.
 * Give it to WITH_ALLOWANCE as `hem`. A step gives the distance from the raw edge at which the hem
 * is sewn down. Source: Oregon State extension 1961; Kinne & Cooley 1916 for the stitching.
 */
export const HEM_TURN = define({
  name: "HEM_TURN",
  summary: "How much cloth a hem needs below its fold, its turning included.",
  source:
    "It's Fun to Sew a Cotton School Dress, Oregon State extension L-87, 1961: 1 1/2 in hem, turn 2 in, then 1/2 in",
  words: "hem allowance turn up turning under deep fold",
  takes: {
    depth: { kind: "length", about: "finished depth of the hem", from: 0.1, to: 100 },
    turning: {
      kind: "length",
      about: "width turned in at the raw edge; 0 for a bound or faced edge",
      from: 0,
      to: 50,
    },
  },
  returns: "length",
  usual: ["turning <= depth"],
  compute({ depth, turning }, { step }) {
    step("stitch_from_edge", "2 * depth + turning", 2 * depth + turning);
    return step("allowance", "depth + turning", depth + turning);
  },
  draw: ({ depth, turning }) =>
    drawHem(depth, turning, { allowance: "allowance", stitch: "stitch_from_edge" }),
  examples: [
    {
      given: { depth: 1.5, turning: 0.5 },
      gives: 2,
      because: "Oregon State 1961: turn 2 in, then 1/2 in under",
    },
    { given: { depth: 4, turning: 1 }, gives: 5, because: "a 4 cm hem with 1 cm turned in", unit: "cm" },
  ],
});
