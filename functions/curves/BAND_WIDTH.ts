import { define } from "../define.ts";
import { stroke } from "../drawing/shapes.ts";

/**
 * Width to cut a straight band that is folded into `parts` layers, in the book's unit: the width
 * of the layers plus one turning. Source: Johnson 1964 (three parts and a fold).
 */
export const BAND_WIDTH = define({
  name: "BAND_WIDTH",
  summary: "How wide to cut a band that is folded into two or three layers.",
  source:
    "Johnson, It's Fun to Sew Aprons and Skirts, Oregon/Utah State extension L-86, 1964: 3 parts of 2 in and 1/2 in",
  words: "waistband apron skirt band fold layers strip binding turning",
  takes: {
    depth: { kind: "length", about: "how high the band finishes", from: 0.2, to: 60 },
    parts: {
      kind: "count",
      about: "how many layers the band has, the outer one included",
      from: 1,
      to: 6,
      otherwise: 2,
    },
    turning: {
      kind: "length",
      about: "width for all turnings together",
      from: 0,
      to: 20,
      otherwise: { cm: 1.2, in: 1 / 2 },
    },
  },
  returns: "length",
  usual: ["turning <= 2 * depth"],
  alike: { "depth, turning": "a narrow band may have turnings wider than itself" },
  compute({ depth, parts, turning }, context) {
    const turned = context.step("turned", "turning", turning);
    return context.step("width", "parts * depth + turned", parts * depth + turned);
  },
  draw: ({ depth, parts }, { width = 0 }) => [
    stroke(
      [
        [0, 0],
        [0, width],
      ],
      "cut",
      { shows: "width" },
    ),
    ...Array.from({ length: parts + 1 }, (_, i) =>
      stroke(
        [
          [-depth / 4, i * depth],
          [depth, i * depth],
        ],
        i === 0 || i === parts ? "seam" : "fold",
      ),
    ),
    stroke(
      [
        [0, 0],
        [depth * 0.75, 0],
        [depth * 0.75, width],
        [0, width],
      ],
      "cut",
    ),
  ],
  examples: [
    { given: { depth: 2, parts: 3, turning: 0.5 }, gives: 6.5, because: "Johnson 1964: 3 × 2 in and 1/2 in" },
    { given: { depth: 4, turning: 2 }, gives: 10, because: "twice 4 cm and 1 cm at both edges", unit: "cm" },
  ],
});
