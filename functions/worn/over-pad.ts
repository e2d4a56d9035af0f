/**
 * A petticoat over a pad. How much longer it is at the back and the side than in front tells how
 * far the pad holds it out there: from the waist the cloth goes straight out to the pad's edge and from
 * there plumb to one level hem. The girth over the pad, where it is measured, settles what the three lengths
 * leave open: how far the front stands out.
 */
import { phrase } from "../phrase.ts";
import { type Lengths, taking } from "./body.ts";
import type { Garment } from "./garment.ts";
import { WAYS } from "./hang.ts";
import { evenAngles, girthOf, type Section, withGirth } from "./section.ts";
import { skirt, statureFor } from "./skirt.ts";

const USUAL_WAIST = 72;
/** The pad's edge below the waist, as a share of the stature, and how far the front stands out. */
const PAD_LEVEL = 0.06;
const FRONT_OUT = 0.012;
/** The share of the way down over which the gathers open below the pad. */
const LET_OUT = 0.15;

export interface OverPad {
  /** Half the flat width. */
  readonly width: number;
  readonly back: number;
  readonly side: number;
  readonly front: number;
  readonly side_share: number;
}

/** The pad's edge, and what of the cloth hangs plumb below it. */
interface Pad {
  readonly held: Section;
  readonly below: number;
}

export function overPad({ width, back, side, front }: OverPad, lengths: Lengths): Garment {
  const taken = taking(lengths);
  const fits = (lengths.body.known.waist?.length ?? 0) <= 2 * width;
  const known = fits ? taken.take("waist") : undefined;
  const waist = Math.min(known ?? lengths.cm(USUAL_WAIST), 2 * width);
  const stature = lengths.body.known.stature?.length ?? statureFor(waist, lengths);
  const shape = withGirth({ half: 1, front: 0.74, back: 0.74 }, waist);
  const least = Math.min(back, side, front);
  const level = Math.min(PAD_LEVEL * stature, 0.5 * least);
  /** The pad that holds the shortest of the three lengths out by `least_out`. */
  const heldBy = (least_out: number): Pad => {
    const below = least - Math.hypot(least_out, level);
    const out = (length: number) => Math.sqrt(Math.max((length - below) ** 2 - level ** 2, 0));
    const held = {
      half: shape.half + out(side),
      front: shape.front + out(front),
      back: shape.back + out(back),
    };
    return { held, below };
  };
  const hip = lengths.body.known.hip_over_pad;
  const { held, below } = hip ? withHip(hip.length, heldBy) : heldBy(FRONT_OUT * stature);
  const round = girthOf(held);
  const met = hip !== undefined && Math.abs(round / hip.length - 1) < 0.005;
  if (met) taken.take("hip_over_pad");
  const angles = evenAngles(held, WAYS, true);
  // Along the pad's own profile: straight from the waist to its edge, then plumb.
  const lying = (share: number) => {
    const at = (share - Math.floor(share)) * WAYS;
    const from = Math.floor(at);
    const angle = angles[from]! + ((angles[from + 1] ?? angles[from]!) - angles[from]!) * (at - from);
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    const deep = cos > 0 ? held.back - shape.back : held.front - shape.front;
    return Math.hypot((held.half - shape.half) * sin, deep * cos, level);
  };
  // On the pad the gathers lie flat; they open below its edge, so that their folds cost every part the same.
  const edge = (side - below) / side;
  const taut = (down: number) => waist + (round - waist) * Math.min(1, down / edge);
  const cloth = (down: number) => {
    const open = Math.max(0, Math.min(1, (down - edge) / LET_OUT));
    return Math.min(taut(down), 2 * width) * (1 - open) + 2 * width * open;
  };
  return skirt(
    {
      waist,
      hip: round,
      hip_drop: level,
      hips: { hip_shape: held, hip_level: level },
      depth: (share) => lying(share) + below,
      pad: { edge, lying },
      quarters: true,
      taken,
      round: cloth,
      folds: 4 * Math.max(3, Math.min(10, Math.round(round / lengths.cm(4 * 6)))),
      assumed: [
        ...(known === undefined ? [phrase`it is gathered to a waist of ${lengths.say(waist)}`] : []),
        phrase`the pad holds it out most ${lengths.say(level)} below the waist, all round ${lengths.say(round)}, as the lengths over it tell`,
        ...(hip && !met
          ? [
              phrase`the hip girth over the pad ${lengths.say(hip.length, round)} from ${hip.from} does not agree with these lengths, and is not used`,
            ]
          : []),
      ],
    },
    lengths,
  );
}

/** The pad that is `hip` round; the nearest one when there is no such pad. */
function withHip(hip: number, heldBy: (out: number) => Pad): Pad {
  let [low, high] = [0, hip / 4];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (girthOf(heldBy(middle).held) < hip) low = middle;
    else high = middle;
  }
  return heldBy((low + high) / 2);
}
