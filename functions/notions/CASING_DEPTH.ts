import { CORDS } from "../cautions.ts";
import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { phrase } from "../phrase.ts";

/**
 * How much to add beyond the folded edge for a casing turned down at it, in the book's unit: the
 * width of the elastic or tape in it, ease to draw it through, and the turning under. Source:
 * common practice.
 */
export const CASING_DEPTH = define({
  name: "CASING_DEPTH",
  summary: "How much to add at an edge for a casing that takes elastic, tape or a drawstring.",
  source: "common practice: 3 mm or 1/8 in ease, 6 mm or 1/4 in turned under",
  words: "casing elastic drawstring tunnel heading turn down waist sleeve",
  takes: {
    width: { kind: "length", about: "width of the elastic or tape", from: 0.2, to: 50 },
    ease: {
      kind: "length",
      about: "extra width to draw the elastic or tape through",
      from: 0,
      to: 10,
      otherwise: { cm: 0.3, in: 1 / 8 },
    },
    turning: {
      kind: "length",
      about: "width turned under at the raw edge",
      from: 0,
      to: 20,
      otherwise: { cm: 0.6, in: 1 / 4 },
    },
  },
  returns: "length",
  usual: ["ease <= width"],
  compute({ width, ease, turning }, context) {
    const room = context.step("room", "ease", ease);
    const under = context.step("under", "turning", turning);
    const tunnel = context.step("tunnel", "width + room", width + room);
    return context.step("depth", "tunnel + under", tunnel + under);
  },
  draw(_given, { tunnel = 0, under = 0, depth = 0 }) {
    const long = 4 * depth;
    return [
      stroke(
        [
          [0, -depth],
          [long, -depth],
          [long, depth],
          [0, depth],
          [0, -depth],
        ],
        "cut",
      ),
      stroke(
        [
          [0, 0],
          [long, 0],
        ],
        "fold",
        { label: phrase`fold` },
      ),
      stroke(
        [
          [0, tunnel],
          [long, tunnel],
        ],
        "stitch",
      ),
      stroke(
        [
          [0, -tunnel],
          [long, -tunnel],
        ],
        "fold",
        { label: phrase`turned under` },
      ),
      dimension([-depth / 2, -depth], [-depth / 2, 0], { shows: "depth" }),
      ...(under > 0 ? [dimension([long * 1.05, -depth], [long * 1.05, -tunnel], { shows: "under" })] : []),
    ];
  },
  examples: [
    { given: { width: 0.75 }, gives: 1.125, because: "common practice: 3/4, 1/8 and 1/4 in" },
    { given: { width: 2, ease: 0.4, turning: 0.6 }, gives: 3, unit: "cm", because: "2, 0.4 and 0.6 cm" },
  ],
  cautions: CORDS,
});
