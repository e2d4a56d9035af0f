import { CORDS } from "../cautions.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * Length of a drawstring, in the book's unit: the casing drawn flat and wide open, plus the length
 * that hangs from each end to tie. Source: geometry.
 */
export const DRAWSTRING_LENGTH = define({
  name: "DRAWSTRING_LENGTH",
  summary: "How long to cut a drawstring so that the edge still opens flat.",
  source: "geometry",
  words: "drawstring cord tape tie casing chemise petticoat bag reticule breeches",
  takes: {
    opening: { kind: "length", about: "length of the casing, drawn out flat", from: 1, to: 2000 },
    tails: { kind: "length", about: "length that hangs from each end to tie", from: 0, to: 200 },
  },
  returns: "length",
  usual: ["tails <= 2 * opening"],
  compute({ opening, tails }, { step }) {
    const ends = step("ends", "2 * tails", 2 * tails);
    return step("length", "opening + ends", opening + ends);
  },
  draw({ opening, tails }, { length = 0 }) {
    const high = length / 30;
    return [
      stroke(
        [
          [0, -high],
          [opening, -high],
          [opening, high],
          [0, high],
          [0, -high],
        ],
        "stitch",
        { label: phrase`casing` },
      ),
      stroke(
        [
          [-tails, 0],
          [opening + tails, 0],
        ],
        "placement",
        { shows: "length" },
      ),
      dimension([-tails, 3 * high], [opening + tails, 3 * high], { shows: "length" }),
    ];
  },
  examples: [
    { given: { opening: 44, tails: 10 }, gives: 64, because: "44 in and twice 10 in" },
    { given: { opening: 120, tails: 25 }, gives: 170, unit: "cm", because: "120 cm and twice 25 cm" },
  ],
  cautions: `${CORDS} Sew the string fast at its middle.`,
});
