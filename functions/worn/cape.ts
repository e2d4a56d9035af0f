/** A cape on the shoulders of a plain figure. */
import { phrase } from "../phrase.ts";
import { type Lengths, taking } from "./body.ts";
import { SHOULDER_HALF } from "./figure.ts";
import type { Garment } from "./garment.ts";
import { foldsRound } from "./skirt.ts";

const STATURE = 165;
const USUAL_NECK = 37;
const WAIST_TO_STATURE = 0.44;

export interface CapeMeasures {
  readonly neck: number;
  readonly length: number;
  readonly overlap: number;
  /** All round, without the overlap. */
  readonly hem: number;
}

export function cape({ neck, length, overlap, hem }: CapeMeasures, lengths: Lengths): Garment {
  // A small neck is that of a smaller figure; a wide one goes round over other clothes.
  const taken = taking(lengths);
  const [height, shoulder] = [taken.take("stature"), taken.take("shoulder")];
  const stature = height ?? lengths.cm(STATURE) * Math.min(1, neck / lengths.cm(30));
  const worn = Math.min(neck, 1.5 * lengths.cm(USUAL_NECK));
  const waist = taken.take("waist") ?? WAIST_TO_STATURE * stature;
  const figure = {
    waist,
    hip: taken.take("hip") ?? waist * 1.3,
    hip_drop: taken.take("hip_drop") ?? stature / 8,
    bust: taken.take("bust"),
    waist_height: taken.take("waist_height"),
  };
  const across = lengths.say(2 * SHOULDER_HALF * stature);
  const assumed = [
    height === undefined
      ? shoulder === undefined
        ? phrase`the figure stands ${lengths.say(stature)} tall, with shoulders of ${across} across`
        : phrase`the figure stands ${lengths.say(stature)} tall`
      : shoulder === undefined
        ? phrase`it has shoulders of ${across} across`
        : "",
  ];
  return {
    figure: {
      ...figure,
      shoulder,
      neck: worn,
      stature,
      clear: length - 0.2 * stature + lengths.cm(2),
    },
    from: "neck",
    drop: () => 0,
    depth: () => length,
    round: (share) => neck + (hem - neck) * share,
    folds: foldsRound(0.65 * stature, lengths),
    pleats: [],
    opening: { overlap },
    measured: taken.measured,
    assumed: [...assumed.filter(Boolean), ...taken.unsure],
  };
}
