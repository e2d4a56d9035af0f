/** A cape on the shoulders of a plain figure. */
import type { Garment } from "./garment.ts";
import { foldsRound, type Lengths } from "./skirt.ts";

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
  const stature = lengths.cm(STATURE) * Math.min(1, neck / lengths.cm(30));
  const worn = Math.min(neck, 1.5 * lengths.cm(USUAL_NECK));
  const waist = WAIST_TO_STATURE * stature;
  return {
    figure: {
      waist,
      hip: waist * 1.3,
      hip_drop: stature / 8,
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
    assumed: [
      `the figure stands ${lengths.say(stature)} tall, with shoulders of ${lengths.say(0.236 * stature)} across`,
    ],
  };
}
