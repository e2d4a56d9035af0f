import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawEvenPleats, EVEN_PLEATS, HIDDEN_LAYERS_RULE, hiddenLayers } from "../drafting/pleat-creases.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * How wide a piece of cloth finishes once it is pleated, in the book's unit: its flat width less the
 * seam allowance and less the layers that the pleats hide. The inverse of FLAT_WIDTH.
 * Source: geometry.
 */
export const FINISHED_WIDTH = define({
  name: "FINISHED_WIDTH",
  summary: "How wide cloth comes out once it is pleated, from its flat width.",
  source: "geometry: the flat width minus the layers that the pleats hide",
  words: "pleats finished from flat comes out width once pleated skirt panel kilt inverse",
  takes: {
    flat: { kind: "length", about: "flat width of the cloth, as cut", from: 0.5, to: 50_000 },
    ...EVEN_PLEATS,
  },
  returns: "length",
  usual: ["depth < flat"],
  alike: { "depth, seam": "seam allowances may take more than a pleat is deep" },
  compute({ flat, count, depth, style, seam }, { step, say }) {
    const layers = step("layers", HIDDEN_LAYERS_RULE, hiddenLayers(style));
    const hidden = step("hidden", "layers * depth * count", layers * depth * count);
    const finished = flat - seam - hidden;
    if (!isAbove(finished, 0, flat)) {
      throw new Refusal(
        phrase`flat must be more than ${say(hidden + seam)}, which the pleats and seams take, not ${say(flat)}`,
      );
    }
    step("times", "(flat - seam) / (flat - seam - hidden)", (flat - seam) / finished);
    return step("finished", "flat - seam - hidden", finished);
  },
  draw: (given, { finished = 0 }) => drawEvenPleats({ ...given, finished }),
  examples: [
    {
      given: { flat: 236, count: 18, depth: 4 },
      gives: 92,
      unit: "cm",
      because: "Dress Making, Trade Practical, p. 203 ex. 1b, backwards: 236 less 2 × 4 × 18",
    },
    {
      given: { flat: 37, count: 3, depth: 2, style: "box", seam: 1 },
      gives: 12,
      because: "36 in without the seams, less four layers of 2 in three times",
    },
  ],
});
