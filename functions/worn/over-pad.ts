/**
 * A petticoat over a pad. How much longer it is at the back and the side than in front tells how
 * far the pad holds it out there: from the waist the cloth goes straight out to the pad's edge and from
 * there plumb to one level hem.
 */
import type { Garment } from "./garment.ts";
import { girthOf, withGirth } from "./section.ts";
import { type Lengths, skirt, statureFor } from "./skirt.ts";

const USUAL_WAIST = 72;
/** The pad's edge below the waist, as a share of the stature, and how far the front stands out. */
const PAD_LEVEL = 0.06;
const FRONT_OUT = 0.012;

export interface OverPad {
  /** Half the flat width. */
  readonly width: number;
  readonly back: number;
  readonly side: number;
  readonly front: number;
  readonly side_share: number;
}

export function overPad({ width, back, side, front }: OverPad, lengths: Lengths): Garment {
  const waist = Math.min(lengths.cm(USUAL_WAIST), 2 * width);
  const stature = statureFor(waist, lengths);
  const shape = withGirth({ half: 1, front: 0.74, back: 0.74 }, waist);
  const [least, pad] = [
    Math.min(back, side, front),
    Math.min(PAD_LEVEL * stature, 0.5 * Math.min(back, side, front)),
  ];
  // The shortest of the three goes out a little, as over a body.
  const below = least - Math.hypot(FRONT_OUT * stature, pad);
  const out = (length: number) => Math.sqrt(Math.max((length - below) ** 2 - pad ** 2, 0));
  const held = {
    half: shape.half + out(side),
    front: shape.front + out(front),
    back: shape.back + out(back),
  };
  const hip = girthOf(held);
  const depth = (share: number) => {
    const round = Math.min(share, 1 - share) * 4;
    const eased = (from: number, to: number, at: number) =>
      from + ((to - from) * (1 - Math.cos(Math.PI * at))) / 2;
    return round < 1 ? eased(back, side, round) : eased(side, front, round - 1);
  };
  return skirt(
    {
      waist,
      hip,
      hip_drop: pad,
      hips: { hip_shape: held, hip_level: pad },
      depth,
      round: () => 2 * width,
      gathered: true,
      folds: 4 * Math.max(3, Math.min(10, Math.round(hip / lengths.cm(4 * 6)))),
      assumed: [
        `it is gathered to a waist of ${lengths.say(waist)}`,
        `the pad holds it out most ${lengths.say(pad)} below the waist, all round ${lengths.say(hip)}, as the lengths over it tell`,
      ],
    },
    lengths,
  );
}
