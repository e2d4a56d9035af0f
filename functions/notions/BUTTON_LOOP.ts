import { define } from "../define.ts";
import { BUTTON_GIRTH_RULE, BUTTON_SHAPE, buttonGirth } from "../drafting/button.ts";
import { dimension, type Shape, stroke } from "../drawing/shapes.ts";
import { arc, line } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * Cord or rouleau for button loops set in a seam, in the book's unit: each loop goes out and back as
 * far as a buttonhole for that button is long, with a seam allowance at both ends. Source: geometry.
 */
export const BUTTON_LOOP = define({
  name: "BUTTON_LOOP",
  summary: "How much cord or rouleau to cut for loops that pass over buttons.",
  source: "geometry: a loop opens as far as a buttonhole of half its length",
  words: "rouleau loop frog cord ball button bridal closure",
  takes: {
    diameter: { kind: "length", about: "diameter of the button", from: 0.3, to: 20 },
    thickness: {
      kind: "length",
      about: "thickness of the button",
      from: 0,
      to: 20,
      otherwise: 0,
    },
    seam: { kind: "length", about: "length caught in the seam at each end", from: 0, to: 10, otherwise: 0 },
    count: { kind: "count", about: "how many loops", from: 1, to: 1000, otherwise: 1 },
    shape: BUTTON_SHAPE,
  },
  returns: "length",
  usual: ["thickness <= diameter"],
  alike: { "diameter, seam": "a seam may catch more than a small button is wide" },
  compute({ diameter, thickness, seam, count, shape }, { step }) {
    const girth = step("girth", BUTTON_GIRTH_RULE, buttonGirth({ diameter, thickness, shape }));
    const reach = step("reach", "girth / 2", girth / 2);
    const each = step("each", "2 * reach + 2 * seam", 2 * reach + 2 * seam);
    return step("length", "count * each", count * each);
  },
  draw({ diameter, seam }, { each = 0 }) {
    // One loop: two legs and a half round as wide as a third of the button, drawn at its length.
    const r = diameter / 6;
    const leg = (each - Math.PI * r) / 2;
    const shapes: Shape[] = [
      {
        kind: "edge",
        edge: [
          line([-seam, -r], [leg - seam, -r]),
          arc([leg - seam, 0], r, -Math.PI / 2, Math.PI / 2),
          line([leg - seam, r], [-seam, r]),
        ],
        role: "stitch",
        label: phrase`loop`,
        shows: "each",
      },
      stroke(
        [
          [0, -diameter],
          [0, diameter],
        ],
        "seam",
        { label: phrase`edge` },
      ),
      dimension([0, diameter / 2], [leg - seam + r, diameter / 2]),
    ];
    return shapes;
  },
  examples: [
    {
      given: { diameter: 0.5, thickness: 0.25, seam: 0.5, count: 20 },
      gives: 50,
      because: "twenty loops of 1 1/2 in and twice 1/2 in",
    },
    {
      given: { diameter: 1.2, thickness: 0.4, seam: 1 },
      gives: 5.2,
      unit: "cm",
      because: "3.2 cm and twice 1 cm",
    },
  ],
});
