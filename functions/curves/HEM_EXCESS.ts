import { define } from "../define.ts";
import { dimension, type Shape } from "../drawing/shapes.ts";
import { arc } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * How much longer the raw edge of a round hem is than its fold, in the book's unit: 2π × circle ×
 * depth, whatever the waist. The hem is sewn to a line that is shorter than the fold by the same
 * amount, so twice that must be eased or pleated in: a step gives it. Source: geometry.
 */
export const HEM_EXCESS = define({
  name: "HEM_EXCESS",
  summary: "How much longer the raw edge of a round hem is than its fold, and what must be eased in.",
  source: "geometry",
  words: "circular circle skirt hem fullness ease in turn up flare shallow",
  takes: {
    depth: { kind: "length", usual: [0, 40], about: "how deep the hem is turned up", from: 0, to: 100 },
    circle: {
      kind: "share",
      about: "how much of a circle the skirt is: 1 a full circle, 0.5 half",
      from: 0,
      to: 10,
      otherwise: 1,
    },
  },
  returns: "length",
  compute({ depth, circle }, { step }) {
    step("to_ease_in", "4 * PI() * circle * depth", 4 * Math.PI * circle * depth);
    return step("excess", "2 * PI() * circle * depth", 2 * Math.PI * circle * depth);
  },
  draw({ depth, circle }): Shape[] {
    const turn = 2 * Math.PI * Math.min(circle, 1);
    if (turn < 1e-3 || depth === 0) return [];
    const radius = depth * 6;
    const ring = (r: number) => [arc([0, 0], r, 0, turn)];
    return [
      { kind: "edge", edge: ring(radius), role: "fold", label: phrase`fold` },
      { kind: "edge", edge: ring(radius + depth), role: "cut", label: phrase`raw edge` },
      { kind: "edge", edge: ring(radius - depth), role: "stitch", label: phrase`where it is sewn down` },
      dimension([radius, 0], [radius + depth, 0], { label: phrase`depth` }),
    ];
  },
  examples: [
    {
      given: { depth: 3 },
      gives: 18.8495559215,
      within: 1e-9,
      because: "2π × 3, worked in 50 digits",
      unit: "cm",
    },
    { given: { depth: 1, circle: 0.5 }, gives: Math.PI, because: "half a circle, an inch deep" },
  ],
});
