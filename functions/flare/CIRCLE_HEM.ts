import { define } from "../define.ts";
import { drawFlare } from "../drafting/flared-panel.ts";
import { between, skirt } from "../worn/skirt.ts";

/**
 * Hem of a circle part all round, in the book's unit: 2π times the part of a circle, times radius
 * and length. Over its waist it gains 2π times the part times the length, whatever the waist.
 * Source: geometry.
 */
export const CIRCLE_HEM = define({
  name: "CIRCLE_HEM",
  summary: "How long the hem of a circle, half circle or any part of a circle is all round.",
  source: "geometry",
  words: "circle skirt hem sweep circumference binding trim cape flounce horsehair",
  takes: {
    radius: {
      kind: "length",
      about: "radius of the inner edge, as CIRCLE_RADIUS gives it",
      from: 0.1,
      to: 1000,
    },
    length: { kind: "length", about: "from the inner edge to the hem", from: 0.5, to: 500 },
    circle: {
      kind: "share",
      about: "how much of a circle: 1 a whole circle, 0.5 half, 2 two circles",
      from: 0.02,
      to: 20,
      otherwise: 1,
    },
  },
  returns: "length",
  compute({ radius, length, circle }, { step }) {
    const turn = step("turn", "2 * PI() * circle", 2 * Math.PI * circle);
    step("gained", "turn * length", turn * length);
    const outer = step("hem_radius", "radius + length", radius + length);
    return step("hem", "turn * hem_radius", turn * outer);
  },
  draw: ({ radius, length }, { hem = 0, turn = 0 }) => drawFlare(turn * radius, hem, length, { hem: "hem" }),
  worn: ({ radius, length }, { turn = 0, hem = 0 }, lengths) =>
    skirt({ waist: turn * radius, depth: length, round: between(turn * radius, hem) }, lengths),
  examples: [
    {
      given: { radius: 72 / (2 * Math.PI), length: 60 },
      gives: 72 + 120 * Math.PI,
      unit: "cm",
      because: "a full circle adds 2π × 60 to the waist of 72",
    },
    {
      given: { radius: 9, length: 24, circle: 0.5 },
      gives: 33 * Math.PI,
      because: "half round at a radius of 33 in",
    },
  ],
});
