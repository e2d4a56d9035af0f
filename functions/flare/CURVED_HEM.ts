import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawFlare } from "../drafting/flared-panel.ts";
import { numberText } from "../number-text.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Length of the hem of a flared panel along its curve, in the book's unit: its top and, for each
 * radian of the angle between its sides, once its depth. Longer than the straight gaps of a
 * slashed paper added up, by the bulge of the curve. Source: geometry.
 */
export const CURVED_HEM = define({
  name: "CURVED_HEM",
  summary:
    "How long a flared panel's hem is along its curve, from the top, the depth and the angle it opens to.",
  source: "geometry: ring sector",
  words: "hem sweep arc length circular flounce angle degrees",
  takes: {
    top: { kind: "length", about: "the top edge, along its curve", from: 0.5, to: 5000 },
    depth: { kind: "length", about: "from top to hem, square to both", from: 0.5, to: 500 },
    angle: {
      kind: "angle",
      about: "the angle between the sides: 360 for a full circle, more for several",
      from: -360,
      to: 3600,
    },
  },
  returns: "length",
  alike: { "top, depth": "it may be wider or longer" },
  compute({ top, depth, angle }, { step }) {
    const gain = step("gain", "depth * RADIANS(angle)", (depth * angle * Math.PI) / 180);
    if (!isAbove(top + gain, 0, top)) {
      throw new Refusal(
        (say) =>
          phrase`angle must leave a hem above 0: at ${numberText(angle)} degrees the hem loses ${say(-gain, top)}, more than top ${say(top, -gain)} has`,
      );
    }
    return step("curved_hem", "top + gain", top + gain);
  },
  draw: ({ top, depth }, { curved_hem = 0 }) => drawFlare(top, curved_hem, depth, { hem: "curved_hem" }),
  examples: [
    {
      given: { top: 72, depth: 60, angle: 180 },
      gives: 260.4955592154,
      within: 1e-9,
      unit: "cm",
      because: "half a circle adds π × 60 = 188.4956 whatever the waist",
    },
    {
      given: { top: 16.5, depth: 8, angle: 50.13380707394703 },
      gives: 23.5,
      because: "7/8 of a radian at a depth of 8 adds 7",
    },
  ],
});
