import { define } from "../define.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { arc } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * How far from the edge of a band the middle of a button stands, in the book's unit: half the
 * button and a margin, so that the button lies wholly on the band. Source: Johnson 1964.
 */
export const BUTTON_INSET = define({
  name: "BUTTON_INSET",
  summary: "How far from the edge of a band to sew a button.",
  source:
    "Johnson, It's Fun to Sew Aprons and Skirts, Oregon / Utah State extension L-86, 1964: half the button and 1/4 in",
  words: "button placket edge distance overlap extension",
  takes: {
    diameter: { kind: "length", about: "diameter of the button", from: 0.3, to: 20 },
    margin: {
      kind: "length",
      about: "distance from the button's rim to the edge",
      from: 0,
      to: 20,
      otherwise: { cm: 0.6, in: 1 / 4 },
    },
  },
  returns: "length",
  usual: ["margin <= 2 * diameter"],
  compute({ diameter, margin }, context) {
    const clear = context.step("clear", "margin", margin);
    return context.step("inset", "diameter / 2 + clear", diameter / 2 + clear);
  },
  draw({ diameter }, { inset = 0 }) {
    const high = 1.5 * diameter;
    return [
      stroke(
        [
          [0, -high],
          [0, high],
        ],
        "cut",
        { label: phrase`edge` },
      ),
      {
        kind: "edge",
        edge: [arc([inset, 0], diameter / 2, 0, 2 * Math.PI)],
        role: "placement",
        label: phrase`button`,
      },
      dimension([0, 0], [inset, 0], { shows: "inset" }),
    ];
  },
  examples: [
    { given: { diameter: 0.75 }, gives: 0.625, because: "Johnson 1964: 3/8 in and 1/4 in" },
    { given: { diameter: 2, margin: 0.5 }, gives: 1.5, unit: "cm", because: "1 cm and 0.5 cm" },
  ],
});
