import { define } from "../define.ts";
import { BUTTON_GIRTH_RULE, BUTTON_SHAPE, buttonGirth } from "../drafting/button.ts";
import { dimension, stroke } from "../drawing/shapes.ts";
import { arc } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * Length of the slit of a buttonhole, in the book's unit: half the girth of the button, which is
 * its diameter and its thickness for a flat one and half a circle for a ball. `ease` allows for ends
 * that draw in.
 * Source: common practice.
 */
export const BUTTONHOLE = define({
  name: "BUTTONHOLE",
  summary: "How long to make a buttonhole for a button.",
  source: "common practice: diameter and thickness; of a ball, half its girth",
  words: "button hole slit length size worked bound",
  takes: {
    diameter: { kind: "length", about: "diameter of the button", from: 0.3, to: 20 },
    thickness: {
      kind: "length",
      about: "thickness of the button",
      from: 0,
      to: 20,
      otherwise: 0,
    },
    ease: {
      kind: "length",
      about: "extra length for stitching that draws the slit in",
      from: 0,
      to: 5,
      otherwise: 0,
    },
    shape: BUTTON_SHAPE,
  },
  returns: "length",
  usual: ["thickness <= diameter", "ease < diameter"],
  alike: { "thickness, ease": "stitching may draw in by more than a flat button is thick" },
  compute({ diameter, thickness, ease, shape }, { step }) {
    const girth = step("girth", BUTTON_GIRTH_RULE, buttonGirth({ diameter, thickness, shape }));
    return step("slit", "girth / 2 + ease", girth / 2 + ease);
  },
  draw({ diameter }, { slit = 0 }) {
    return [
      {
        kind: "edge",
        edge: [arc([diameter / 2, -diameter], diameter / 2, 0, 2 * Math.PI)],
        role: "placement",
        label: phrase`button`,
      },
      stroke(
        [
          [0, 0],
          [slit, 0],
        ],
        "stitch",
        { shows: "slit" },
      ),
      dimension([0, diameter / 4], [slit, diameter / 4], { shows: "slit" }),
    ];
  },
  examples: [
    {
      given: { diameter: 1, thickness: 0.25 },
      gives: 1.25,
      because: "common practice: 1 in button, 1/4 in thick",
    },
    {
      given: { diameter: 1, shape: "ball" },
      gives: Math.PI / 2,
      because: "half the girth of a ball of 1 in, about 1 5/8",
    },
    {
      given: { diameter: 1.8, thickness: 0.4, ease: 0.2 },
      gives: 2.4,
      unit: "cm",
      because: "1.8, 0.4 and 0.2 cm",
    },
  ],
});
