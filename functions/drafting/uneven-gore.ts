/**
 * The gores of a skirt that is longer at the back: all as wide, their seams one line for as far as they go,
 * and each seam as long as the skirt there.
 *
 * Round the skirt, at an angle from centre front, the length is mean + wave·cos + twist·cos(twice the angle): it passes
 * through the lengths at front, side and back and changes nowhere with a jump, so that the hem runs
 * level at centre front and centre back. All gores flare by the same lean below the hip. A gore's hem
 * goes through three places: the ends of both seams and the middle of the gore. At each it leaves the direction square to the seam
 * (or to the middle) by the slope of the whole hem there, which is one figure for both gores at a
 * seam: sewn together, their hems run on without a corner.
 */

import { isAbove, isBelow } from "../compared-figures.ts";
import { pointAhead } from "../geometry/constant-curvature.ts";
import { curveBetween } from "../geometry/curve-between.ts";
import { reaching } from "../geometry/increasing-root.ts";
import { distance, type Edge, line, type Point, type Stroke, strokeLength } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { edgeLength, mirrorEdge, type Piece, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import { hipCurve } from "./gore.ts";

export interface UnevenSkirt {
  readonly gores: number;
  readonly waist: number;
  readonly hip: number;
  readonly hip_drop: number;
  readonly front_length: number;
  readonly side_length: number;
  readonly back_length: number;
  /** All round, along the edge. */
  readonly hem: number;
  /** What lies at centre front: the middle of a gore, or a seam. */
  readonly centre: "gore" | "seam";
}

/** The mean length of the skirt, and how its length changes round it. */
export interface Lengths {
  readonly mean: number;
  readonly wave: number;
  readonly twist: number;
}

export function lengthsRound({
  front_length: front,
  side_length: side,
  back_length: back,
}: UnevenSkirt): Lengths {
  const ends = (front + back) / 2;
  return { mean: (ends + side) / 2, wave: (front - back) / 2, twist: (ends - side) / 2 };
}

/** How long the skirt is at this angle from centre front, in radians. */
export const lengthAt = ({ mean, wave, twist }: Lengths, angle: number): number =>
  mean + wave * Math.cos(angle) + twist * Math.cos(2 * angle);

/** The angle from centre front at which a gore begins, in radians; gore 1 lies at centre front or begins there. */
export const gorePlace = ({ gores, centre }: UnevenSkirt, gore: number): number =>
  (2 * Math.PI * (gore - (centre === "gore" ? 1.5 : 1))) / gores;

/** The steepest a hem may run to the level for its gores to be drawn. */
const STEEPEST = 0.7;
/** The most its sides may lean out from the middle of a gore, in radians. */
const MOST_LEAN = 1.2;

/** The lean of all sides below the hip at which the hems of all gores are as long as wanted. */
export function leanFor(skirt: UnevenSkirt): number {
  const { gores, hip, hip_drop, hem } = skirt;
  const lengths = lengthsRound(skirt);
  const slope = steepestSlope(skirt, lengths);
  if (isAbove(slope, STEEPEST))
    throw new Refusal(
      (say) =>
        phrase`hem must be at least ${say((hem * slope) / STEEPEST, hem)} for a skirt of these lengths, not ${say(hem, (hem * slope) / STEEPEST)}: the hem would run too steeply`,
    );
  const { shortest, longest } = extremes(lengths);
  if (!isAbove(shortest, 1.1 * hip_drop))
    throw new Refusal(
      (say) =>
        phrase`hip_drop must be well above the hem, which is ${say(shortest, hip_drop)} below the waist where the skirt is shortest, not ${say(hip_drop, shortest)}`,
    );
  // Gores that are each other's mirror image are measured once.
  const last = skirt.centre === "gore" ? Math.floor(gores / 2) + 1 : Math.ceil(gores / 2);
  const numbers = Array.from({ length: last }, (_, i) => i + 1);
  const single = (gore: number) =>
    skirt.centre === "gore" ? gore === 1 || 2 * (gore - 1) === gores : 2 * gore - 1 === gores;
  const around = (lean: number) => {
    const over = hipSide(skirt, lean);
    return numbers.reduce(
      (sum, gore) => sum + (single(gore) ? 1 : 2) * edgeLength(goreHem(skirt, lengths, gore, over)),
      0,
    );
  };
  const least = -Math.atan((0.4 * hip) / gores / (longest - hip_drop));
  const [narrowest, widest] = [around(least), around(MOST_LEAN)];
  if (isBelow(hem, narrowest) || isAbove(hem, widest))
    throw new Refusal((say) =>
      hem < narrowest
        ? phrase`hem must be at least ${say(narrowest, hem)} all round for this hip and these lengths, not ${say(hem, narrowest)}`
        : phrase`hem must be at most ${say(widest, hem)} all round for this hip and these lengths, not ${say(hem, widest)}: take more gores`,
    );
  return reaching(around, hem, least, MOST_LEAN);
}

/** How far the hem goes down for each unit along it, where it is steepest. */
function steepestSlope(skirt: UnevenSkirt, lengths: Lengths): number {
  let most = 0;
  for (let i = 0; i <= 360; i += 1)
    most = Math.max(most, Math.abs(slopeAt(skirt, lengths, (i * Math.PI) / 360)));
  return most;
}

const slopeAt = ({ hem }: UnevenSkirt, { wave, twist }: Lengths, angle: number): number =>
  (-2 * Math.PI * (wave * Math.sin(angle) + 2 * twist * Math.sin(2 * angle))) / hem;

function extremes(lengths: Lengths): { shortest: number; longest: number } {
  const all = Array.from({ length: 361 }, (_, i) => lengthAt(lengths, (i * Math.PI) / 360));
  return { shortest: Math.min(...all), longest: Math.max(...all) };
}

/** The sides of all gores as far as they go over the hip, and the way they go on from there. */
interface HipSide {
  readonly lean: number;
  readonly curve: Stroke;
  readonly length: number;
  readonly way: Point;
}

function hipSide({ gores, waist, hip, hip_drop }: UnevenSkirt, lean: number): HipSide {
  const way: Point = [Math.sin(lean), Math.cos(lean)];
  const curve = hipCurve([waist / gores / 2, 0], [hip / gores / 2, hip_drop], way);
  return { lean, curve, length: strokeLength(curve), way };
}

/** The right side of a gore, this long, down from its waist. */
const side = ({ curve, length, way }: HipSide, long: number): Edge => [
  curve,
  line(curve.to, pointAhead(curve.to, way, long - length)),
];

/** The hem from left to right. */
function goreHem(skirt: UnevenSkirt, lengths: Lengths, gore: number, over: HipSide): Edge {
  const from = gorePlace(skirt, gore);
  const step = (2 * Math.PI) / skirt.gores;
  const place = (share: number, where: (long: number) => Point, square: number) => {
    const angle = from + share * step;
    // Square to the seam, and turned down by the slope of the hem.
    const turn = square + Math.asin(slopeAt(skirt, lengths, angle));
    return { at: where(lengthAt(lengths, angle)), speed: [Math.cos(turn), Math.sin(turn)] as Point };
  };
  const right = (long: number): Point => side(over, long).at(-1)!.to;
  const places = [
    place(0, (long) => [-right(long)[0], right(long)[1]], over.lean),
    place(0.5, (long) => [0, long], 0),
    place(1, right, -over.lean),
  ];
  return places.slice(1).map((end, i) => curveBetween(places[i]!, end, distance(places[i]!.at, end.at)));
}

/** Edges: 1 waist from left to right, 2 right side, 3 hem, 4 left side; the middle of the waist at (0, 0). */
export function unevenGore(skirt: UnevenSkirt, gore: number, lean: number): Piece {
  const lengths = lengthsRound(skirt);
  const over = hipSide(skirt, lean);
  const from = gorePlace(skirt, gore);
  const [left, right] = [from, from + (2 * Math.PI) / skirt.gores].map((angle) =>
    side(over, lengthAt(lengths, angle)),
  ) as [Edge, Edge];
  const half = skirt.waist / skirt.gores / 2;
  const hem = reverseEdge(goreHem(skirt, lengths, gore, over));
  return pieceOf(
    [[line([-half, 0], [half, 0])], right, hem, reverseEdge(mirrorEdge(left))],
    ["waist", "right side", "hem", "left side"],
  );
}
