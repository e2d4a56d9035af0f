import { define } from "../define.ts";
import { drawDart } from "../drawing/dart.ts";

/**
 * Length of a dart's leg (its stitching line), in the book's unit, for a dart square to its edge;
 * both legs have this length. They are longer than the middle line: draw both before cutting.
 * Source: Pythagoras.
 */
export const DART_LEG = define({
  name: "DART_LEG",
  summary: "Length of the stitching line of a dart.",
  source: "geometry",
  words: "dart stitching line side true legs equal",
  takes: {
    intake: { kind: "length", about: "width of the dart on the edge, from leg to leg", from: 0, to: 200 },
    length: {
      kind: "length",
      about: "length of the dart along its middle, from edge to point",
      from: 0.5,
      to: 300,
    },
  },
  returns: "length",
  usual: ["intake <= 2 * length"],
  alike: { "intake, length": "a dart may be wider than it is long" },
  compute: ({ intake, length }, { step }) =>
    step("leg", "SQRT(length^2 + (intake / 2)^2)", Math.hypot(length, intake / 2)),
  draw: ({ intake, length }) => (intake > 0 ? drawDart(intake, length, { leg: "leg" }) : []),
  examples: [
    { given: { intake: 3, length: 2 }, gives: 2.5, because: "1 1/2 in aside and 2 in down" },
    { given: { intake: 10, length: 12 }, gives: 13, because: "5 aside and 12 down", unit: "cm" },
  ],
});
