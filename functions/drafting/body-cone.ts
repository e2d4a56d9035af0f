/**
 * The body between waist and hip, rolled out flat.
 *
 * Between the two girths the body is taken as a cone, so that it unrolls without stretch into a
 * ring sector: girths become arcs about one apex, drops along the body become differences of
 * radius, and the shortest way over the body becomes a straight line. Where hip and waist are
 * equal the sector is a rectangle (the apex goes to infinity); where the hip is the smaller the
 * apex lies below, and angle and radii are negative, which all formulas here allow.
 */

import type { Takes } from "../define.ts";
import { line, type Point, type Stroke } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/** The arguments with which a function of the dipped waist seam begins. */
export const BODY_AND_DIP = {
  waist: { kind: "length", usual: [40, 200], about: "waist girth", from: 10, to: 500 },
  hip: {
    kind: "length",
    usual: [45, 300],
    about: "hip girth, over the pad if there is one",
    from: 10,
    to: 1000,
  },
  hip_drop: { kind: "length", about: "from waist down to hip, along the body", from: 1, to: 100 },
  front_drop: { kind: "length", about: "from waist down to the point at centre front", from: 0, to: 100 },
} as const satisfies Takes;

/** The arguments about the seam's level part at the back. */
export const LEVEL_BACK = {
  back_drop: {
    kind: "length",
    about: "from waist down to the level part at the back; negative above the waist",
    from: -30,
    to: 100,
    otherwise: 0,
  },
  start: {
    kind: "share",
    about:
      "share of the half girth, from centre back, where the seam runs level; a shallow dip keeps it level longer",
    from: 0,
    to: 1,
    otherwise: 0.5,
  },
} as const satisfies Takes;

/** Half of a pointed waist seam on the flat, all lengths in the unit given. */
export interface WaistSeam {
  /** Of the whole way round, in radians: what the girth gains per length of drop. 0 for a cylinder. */
  readonly angle: number;
  /** From the apex to the waist; Infinity for a cylinder, negative when the hip is the smaller. */
  readonly apex: number;
  /** From the apex to the seam at centre back and at the point in front. */
  readonly back_radius: number;
  readonly front_radius: number;
  /** Girth of the body at those two levels. */
  readonly back_girth: number;
  readonly front_girth: number;
  /** The level part of one half at the back, an arc; the sloped part, a straight line; the level part in front, mostly 0. */
  readonly level: number;
  readonly sloped: number;
  readonly front_level: number;
  /** Where the sloped part begins and ends, as shares of the girth from centre back; 0.5 is centre front. */
  readonly slope_from: number;
  readonly slope_to: number;
  /** Share of the girth that the sloped part passes over. */
  readonly reach: number;
  /** Breadth of the sloped part per girth: at any level it spans a straight `breadth` times the girth there. */
  readonly breadth: number;
  /** Both halves: all round the body. */
  readonly length: number;
}

/**
 * The seam that runs level `back_drop` below the waist from centre back, for the share `start` of
 * half the girth, then straight to a point `front_drop` below the waist at centre front, and that
 * never leaves the band between those two levels. Drops are measured along the body.
 *
 * A straight line on the flat may pass nearer the apex than both its ends: on a body that widens
 * downwards it would rise above the higher end. There the seam runs level at the end nearer the
 * apex until the straight line leaves that level smoothly, as a tangent. So two equal drops give
 * the level girth exactly, and on a body that widens a deeper dip never gives a shorter seam.
 *
 * Refuses a hip too near for its girth, a seam at or beyond the tip of a cone that narrows
 * downwards, and a dip that has no room because the whole seam runs level.
 */
export function developSeam(
  waist: number,
  hip: number,
  hip_drop: number,
  front_drop: number,
  back_drop = 0,
  start = 0.5,
): WaistSeam {
  const angle = coneAngle(waist, hip, hip_drop);
  const back_girth = girthAt(waist, hip, hip_drop, back_drop, "back_drop");
  const front_girth = girthAt(waist, hip, hip_drop, front_drop, "front_drop");
  if (start === 1 && front_drop !== back_drop) {
    throw new Refusal(phrase`start must be less than 1 for the seam to dip at all, not 1`);
  }
  const apex = angle === 0 ? Number.POSITIVE_INFINITY : waist / angle;
  const room = (1 - start) / 2;
  // The tangent from radius s to the circle of radius r spans arccos(r/s); its length is √(s² − r²).
  // In girths, r = girth/angle, nothing grows without bound as the cone nears a cylinder.
  const nearer = Math.min(back_girth, front_girth);
  const tangent = Math.sqrt(Math.abs(angle * (front_drop - back_drop)) * (back_girth + front_girth));
  const reach = angle === 0 ? room : Math.min(room, Math.atan2(tangent, nearer) / Math.abs(angle));
  // Two points at radii r and s, an angle φ apart, lie √((r − s)² + r·s·(2 sin φ/2)²) from each other.
  const breadth = angle === 0 ? reach : (2 * Math.sin((angle * reach) / 2)) / angle;
  const sloped = Math.sqrt((front_drop - back_drop) ** 2 + back_girth * front_girth * breadth ** 2);
  const inFront = back_girth > front_girth;
  const level = (back_girth / 2) * start + (inFront ? 0 : back_girth * (room - reach));
  const front_level = inFront ? front_girth * (room - reach) : 0;
  return {
    angle,
    apex,
    back_radius: apex + back_drop,
    front_radius: apex + front_drop,
    back_girth,
    front_girth,
    level,
    sloped,
    front_level,
    slope_from: inFront ? start / 2 : 0.5 - reach,
    slope_to: inFront ? start / 2 + reach : 0.5,
    reach,
    breadth,
    length: 2 * (level + sloped + front_level),
  };
}

/** How far below the waist, along the body, the seam runs at a share of the girth from centre back; 0.5 is centre front. */
export function seamLevel(
  waist: number,
  seam: WaistSeam,
  back_drop: number,
  front_drop: number,
  share: number,
): number {
  const { angle, slope_from, slope_to } = seam;
  if (share <= slope_from) return back_drop;
  if (share >= slope_to) return front_drop;
  const [ax, ay] = developedPoint(waist, angle, back_drop, slope_from);
  const [bx, by] = developedPoint(waist, angle, front_drop, slope_to);
  if (isNearlyCylinder(angle)) return ay + ((by - ay) * (waist * share - ax)) / (bx - ax);
  // A ray from the apex meets the straight line of the seam.
  const up = waist / angle;
  const [dx, dy] = [bx - ax, by - ay];
  const [sin, cos] = [Math.sin(angle * share), Math.cos(angle * share)];
  return (ax * dy - (ay + up) * dx) / (sin * dy - cos * dx) - up;
}

/** What a step notes: its name, its rule and its value. */
type NoteStep = (name: string, rule: string, value: number) => number;

/** The steps of half a seam, from the angle of the cone to the sum of its parts, which is called `sum`. */
export function seamSteps(step: NoteStep, seam: WaistSeam, sum: string): number {
  step("angle", "(hip - waist) / hip_drop", seam.angle);
  step("back_girth", "waist + angle * back_drop", seam.back_girth);
  step("front_girth", "waist + angle * front_drop", seam.front_girth);
  // The straight line reaches over all that the level part leaves, or as far as the tangent does.
  step(
    "reach",
    "IF(angle = 0; (1 - start) / 2; MIN((1 - start) / 2; ATAN(SQRT(ABS(angle * (front_drop - back_drop)) * (back_girth + front_girth)) / MIN(back_girth; front_girth)) / ABS(angle)))",
    seam.reach,
  );
  step("level", "back_girth * IF(back_girth > front_girth; start / 2; 1 / 2 - reach)", seam.level);
  step("breadth", "IF(angle = 0; reach; 2 * SIN(angle * reach / 2) / angle)", seam.breadth);
  step("sloped", "SQRT((front_drop - back_drop) ^ 2 + back_girth * front_girth * breadth ^ 2)", seam.sloped);
  step(
    "front_level",
    "IF(back_girth > front_girth; front_girth * ((1 - start) / 2 - reach); 0)",
    seam.front_level,
  );
  return step(sum, "level + sloped + front_level", seam.length / 2);
}

/**
 * The angle of the rolled-out body in radians. A flat disc has 2π, and no cone has more, so that
 * a girth can not change by more than 2π times the drop measured along the body.
 */
export function coneAngle(waist: number, hip: number, hip_drop: number): number {
  const angle = (hip - waist) / hip_drop;
  if (Math.abs(angle) >= 2 * Math.PI) {
    throw new Refusal(
      (say) =>
        phrase`hip_drop must be more than ${say(Math.abs(hip - waist) / (2 * Math.PI), waist, hip, hip_drop)} to get from a waist of ${say(waist, Math.abs(hip - waist) / (2 * Math.PI), hip, hip_drop)} to a hip of ${say(hip, Math.abs(hip - waist) / (2 * Math.PI), waist, hip_drop)}, not ${say(hip_drop, Math.abs(hip - waist) / (2 * Math.PI), waist, hip)}`,
    );
  }
  return angle;
}

/** The girth `level` below the waist, on the straight line through waist and hip and beyond them. */
export function girthAt(waist: number, hip: number, hip_drop: number, level: number, name: string): number {
  const girth = waist + ((hip - waist) / hip_drop) * level;
  if (girth <= 1e-9 * waist) {
    const limit = (waist * hip_drop) / (waist - hip);
    throw new Refusal(
      (say) =>
        phrase`${name} must be ${level < 0 ? phrase`more than` : phrase`less than`} ${say(limit, waist, hip, level)}, where a line from waist ${say(waist, limit, hip, level)} to hip ${say(hip, limit, waist, level)} reaches 0, not ${say(level, limit, waist, hip)}`,
    );
  }
  return girth;
}

/**
 * The place on the flat of a place on the body: `level` below the waist and `share` of the
 * girth round from centre back (0.5 is centre front). The waist at centre back is (0, 0), centre
 * back runs down the y axis.
 */
export function developedPoint(waist: number, angle: number, level: number, share: number): Point {
  const girth = waist + angle * level;
  if (isNearlyCylinder(angle)) return [girth * share, level];
  const turn = angle * share;
  return [(girth * Math.sin(turn)) / angle, level - (2 * girth * Math.sin(turn / 2) ** 2) / angle];
}

/** A level line on the flat from one share of the girth to another: an arc about the apex. */
export function developedLevel(
  waist: number,
  angle: number,
  level: number,
  from: number,
  to: number,
): Stroke {
  const start = developedPoint(waist, angle, level, from);
  const end = developedPoint(waist, angle, level, to);
  if (isNearlyCylinder(angle)) return line(start, end);
  const girth = waist + angle * level;
  // Seen from an apex above, x grows as the turn from +x towards +y falls; from one below, as it grows.
  const sweep = -angle * (to - from);
  const radius = Math.abs(girth / angle);
  return { kind: "arc", from: start, to: end, centre: [0, -waist / angle], radius, sweep };
}

/** So near a cylinder that an arc and its chord differ by less than a part in 10¹². */
const isNearlyCylinder = (angle: number): boolean => Math.abs(angle) < 1e-6;
