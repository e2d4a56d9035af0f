import { define } from "../define.ts";
import { HIDDEN_LAYERS_RULE, hiddenLayers, PLEAT_STYLE } from "../drafting/pleat-creases.ts";
import { depthsOf, PLEAT_DEPTHS } from "../drafting/uneven-pleats.ts";
import { drawStrips } from "../drawing/flat-strip.ts";
import { phrase } from "../phrase.ts";

/**
 * How much cloth pleats of different depths take, beyond the finished width, in the book's unit:
 * twice the depth of each knife pleat, four times the depth of each box or inverted one. PLEATED_PANEL
 * draws a panel with them. Source: common practice.
 */
export const UNEVEN_ALLOWANCE = define({
  name: "UNEVEN_ALLOWANCE",
  summary: "How much cloth pleats of different depths take up, beyond the finished width.",
  source: "common practice: each pleat hides two layers of its depth, a box or inverted one four",
  words: "unequal uneven graduated pleats different depths list allowance extra cloth knife box inverted",
  takes: { depths: PLEAT_DEPTHS, style: PLEAT_STYLE },
  returns: "length",
  compute({ depths, style }, { step }) {
    const sum = step(
      "sum",
      "SUM(depths)",
      depthsOf(depths).reduce((a, b) => a + b, 0),
    );
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    return step("allowance", "layers * sum", layers * sum);
  },
  draw: (_, { allowance = 0, sum = 0 }) =>
    drawStrips(
      { length: allowance, width: allowance / 12, label: phrase`cloth hidden`, lengthShows: "allowance" },
      { length: sum, width: allowance / 12, label: phrase`depths end to end`, lengthShows: "sum" },
    ),
  examples: [
    {
      given: { depths: [1, 1.5, 2] },
      gives: 9,
      because: "two layers of each: 2, 3 and 4 in",
    },
    {
      given: { depths: [3, null, 4], style: "box" },
      gives: 28,
      unit: "cm",
      because: "four layers of 3 and of 4 cm",
    },
  ],
});
