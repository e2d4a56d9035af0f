import { define } from "../define.ts";
import { dimension, type Shape } from "../drawing/shapes.ts";
import { arc, radians } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";

/**
 * How much more the outer of two layers needs than the inner where they bend together, in the
 * book's unit: a layer bent by an angle on the outside of others `thickness` thick is longer by
 * thickness × angle (in radians), however tight the bend. 180° is an edge folded flat, as where a
 * collar or a lapel turns over; interlining and inner layers count in the thickness. Source:
 * geometry.
 */
export const TURN_OF_CLOTH = define({
  name: "TURN_OF_CLOTH",
  summary:
    "How much larger to cut the outer layer where two layers fold together, as in collars, facings and linings.",
  source: "geometry",
  words:
    "upper collar under collar lapel facing lining roll favour bulk layer larger shorter smaller inner interlining",
  takes: {
    thickness: {
      kind: "length",
      usual: [0, 2],
      about: "thickness of one layer that lies between the two",
      from: 0,
      to: 5,
    },
    layers: {
      kind: "count",
      about: "how many layers of this thickness lie between the two",
      from: 1,
      to: 50,
      otherwise: 1,
    },
    angle: {
      kind: "angle",
      about: "angle they bend by; 180 for a flat fold",
      from: 0,
      to: 360,
      otherwise: 180,
    },
  },
  returns: "length",
  compute: ({ thickness, layers, angle }, { step }) =>
    step("extra", "thickness * layers * RADIANS(angle)", thickness * layers * radians(angle)),
  draw({ thickness, layers, angle }): Shape[] {
    const stack = thickness * layers;
    if (stack === 0 || angle < 0.1) return [];
    const start = -Math.PI / 2 - radians(angle) / 2;
    const bend = (r: number) => [arc([0, 0], r, start, start + radians(angle))];
    return [
      { kind: "edge", edge: bend(stack), role: "seam", label: phrase`inner layer` },
      { kind: "edge", edge: bend(2 * stack), role: "cut", label: phrase`outer layer` },
      dimension([0, -stack], [0, -2 * stack], { label: phrase`thickness` }),
    ];
  },
  examples: [
    {
      given: { thickness: 0.1, layers: 2 },
      gives: 0.2 * Math.PI,
      because: "half round a fold of two layers, a millimetre each",
      unit: "cm",
    },
    { given: { thickness: 0.0625, angle: 90 }, gives: Math.PI / 32, because: "a quarter turn of 1/16 in" },
  ],
});
