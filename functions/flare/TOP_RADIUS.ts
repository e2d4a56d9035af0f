import { isAbove } from "../compared-figures.ts";
import { define } from "../define.ts";
import { drawFlare } from "../drafting/flared-panel.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/**
 * Radius of the top edge of a flared panel drawn with compasses: top · depth / (hem − top), in the
 * book's unit; the hem is drawn from the same centre with this and the depth. Refuses a hem no
 * longer than the top, which is no curve of this kind. Source: geometry.
 */
export const TOP_RADIUS = define({
  name: "TOP_RADIUS",
  summary: "The radius to draw the top edge of a flared panel with, from its top, hem and depth.",
  source: "geometry: ring sector",
  words: "compass string draw curve circular flounce waist radius pivot",
  takes: {
    top: { kind: "length", about: "the top edge, along its curve", from: 0.5, to: 5000 },
    hem: { kind: "length", about: "the hem, along its curve", from: 0.5, to: 10000 },
    depth: { kind: "length", about: "from top to hem, square to both", from: 0.5, to: 500 },
  },
  returns: "length",
  alike: { "top, depth": "it may be wider or longer" },
  compute({ top, hem, depth }, { step }) {
    if (!isAbove(hem, top)) {
      throw new Refusal(
        (say) =>
          phrase`hem must be longer than top to be drawn from a centre above it, not ${say(hem, top)} against ${say(top, hem)}: a hem as long as the top makes a straight strip`,
      );
    }
    const gain = step("gain", "hem - top", hem - top);
    step("hem_radius", "hem * depth / gain", (hem * depth) / gain);
    return step("top_radius", "top * depth / gain", (top * depth) / gain);
  },
  draw: ({ top, hem, depth }) => drawFlare(top, hem, depth, { radius: "top_radius" }),
  examples: [
    {
      given: { top: 72, hem: 112, depth: 12 },
      gives: 21.6,
      unit: "cm",
      because: "Baldt, Clothing for Women, 1916: flounce of 72 at the top, 112 at the bottom, 12 deep",
    },
    {
      given: { top: 16.5, hem: 23.5, depth: 7 },
      gives: 16.5,
      because: "a gain of 7 at a depth of 7: one radian",
    },
  ],
});
