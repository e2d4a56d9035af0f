import { define } from "../define.ts";
import { drawEvenPleats, EVEN_PLEATS, HIDDEN_LAYERS_RULE, hiddenLayers } from "../drafting/pleat-creases.ts";
import { DRESS_MAKING } from "../sources.ts";

/**
 * Flat width of cloth for a section with pleats, in the book's unit: the finished width, the
 * layers the pleats hide, and the seam allowance. Pleats as deep as they are wide lie edge to edge
 * and take three times the width. Source: Dress Making, Trade Practical, pp. 203-204.
 */
export const FLAT_WIDTH = define({
  name: "FLAT_WIDTH",
  summary: "How wide to cut cloth that is to be pleated to a finished width.",
  source: `${DRESS_MAKING}, pp. 203-204`,
  words: "how much to cut pleated skirt panel kilt three times width knife box inverted valance",
  takes: {
    finished: { kind: "length", about: "width once pleated", from: 0.5, to: 20_000 },
    ...EVEN_PLEATS,
  },
  returns: "length",
  usual: ["depth <= finished"],
  alike: { "depth, seam": "seam allowances may take more than a pleat is deep" },
  compute({ finished, count, depth, style, seam }, { step }) {
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    const hidden = step("hidden", "layers * depth * count", layers * depth * count);
    step("times", "(finished + hidden) / finished", (finished + hidden) / finished);
    return step("flat", "finished + hidden + seam", finished + hidden + seam);
  },
  draw: (given, { flat = 0 }) => drawEvenPleats({ ...given, flat }, "flat"),
  examples: [
    {
      given: { finished: 92, count: 18, depth: 4 },
      gives: 236,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 203 ex. 1b: 2 × 4 × 18 + 92",
    },
    {
      given: { finished: 50, count: 20, depth: 2.5, seam: 2 },
      gives: 152,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 204 b: three times 50 and 2 for the seam",
    },
    {
      given: { finished: 12, count: 3, depth: 2, style: "box" },
      gives: 36,
      because: "box pleats that touch, each 4 in wide: about 3 ft to the foot, Stephenson 1905",
    },
  ],
});
