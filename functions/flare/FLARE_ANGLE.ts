import { define } from "../define.ts";
import { drawFlare } from "../drafting/flared-panel.ts";

/**
 * The angle, in degrees, between the two straight sides of a flared panel laid flat: what its hem
 * gains over its top, shared over its depth. 0 for a straight strip, negative when the hem is the
 * shorter, above 360 when one circle is not enough. Edges measured along their curves. Source: geometry.
 */
export const FLARE_ANGLE = define({
  name: "FLARE_ANGLE",
  summary: "The angle a flared panel opens to when it lies flat, from its top, hem and depth.",
  source: "geometry: ring sector",
  words: "degrees spread sector circle share flare cone",
  takes: {
    top: { kind: "length", about: "the top edge, along its curve", from: 0.5, to: 5000 },
    hem: { kind: "length", about: "the hem, along its curve", from: 0.5, to: 10000 },
    depth: { kind: "length", about: "from top to hem, square to both", from: 0.5, to: 500 },
  },
  returns: "angle",
  usual: ["top <= hem"],
  alike: { "top, depth": "it may be wider or longer" },
  compute({ top, hem, depth }, { step }) {
    const radians = step("radians", "(hem - top) / depth", (hem - top) / depth);
    step("circles", "radians / (2 * PI())", radians / (2 * Math.PI));
    return step("angle", "DEGREES(radians)", (radians * 180) / Math.PI);
  },
  draw: ({ top, hem, depth }, { angle = 0 }) =>
    drawFlare(top, hem, depth, angle > 0 ? { angle: "angle" } : {}),
  examples: [
    {
      given: { top: 72, hem: 200, depth: 60 },
      gives: 122.2309962946,
      within: 1e-9,
      unit: "cm",
      because: "128 cm over a depth of 60 are 2.1333 radians",
    },
    { given: { top: 16.5, hem: 23.5, depth: 8 }, gives: 50.13380707394703, because: "7/8 of a radian" },
  ],
});
