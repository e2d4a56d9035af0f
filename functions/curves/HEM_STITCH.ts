import { define } from "../define.ts";
import { drawHem } from "../drawing/hem-section.ts";

/**
 * How far from the raw edge a hem is sewn down, or the threads for a hemstitch are drawn, in the
 * book's unit: the turning, the hem, and the cloth the hem lies on. Source: Kinne & Cooley 1916.
 */
export const HEM_STITCH = define({
  name: "HEM_STITCH",
  summary: "How far from the raw edge to draw the threads for a hemstitch, or to mark a hem's stitching.",
  source:
    "Kinne & Cooley, Clothing and Health, 1916, How to make the hemstitch: twice the hem and the turning",
  words: "hemstitch drawn thread mark hem line napkin handkerchief",
  takes: {
    depth: { kind: "length", about: "finished depth of the hem", from: 0.1, to: 100 },
    turning: { kind: "length", about: "width turned in at the raw edge", from: 0, to: 50 },
  },
  returns: "length",
  usual: ["turning <= depth"],
  compute: ({ depth, turning }, { step }) => step("from_edge", "2 * depth + turning", 2 * depth + turning),
  draw: ({ depth, turning }) => drawHem(depth, turning, { stitch: "from_edge" }),
  examples: [
    {
      given: { depth: 1, turning: 0.25 },
      gives: 2.25,
      because: "Kinne & Cooley 1916: twice 1 in and 1/4 in",
    },
    { given: { depth: 2.5, turning: 0.5 }, gives: 5.5, because: "twice 2.5 cm and 5 mm", unit: "cm" },
  ],
});
