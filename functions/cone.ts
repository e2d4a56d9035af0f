/**
 * The body between waist and hip, rolled out flat.
 *
 * Between the two girths the body is taken as a cone, so that it unrolls without stretch into a
 * ring sector: girths become arcs about one apex, drops along the body become differences of
 * radius, and the shortest way over the body becomes a straight line. Where hip and waist are
 * equal the sector is a rectangle (the apex goes to infinity); where the hip is the smaller the
 * apex lies below, and angle and radii are negative, which all formulas here allow.
 */
import { Refusal } from "./define.ts";
import { line, type Point, type Stroke } from "./geometry.ts";

/** Half of a pointed waist seam on the flat, all lengths in the unit given. */
export interface Seam {
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
  /** The level part of one half, an arc; and the sloped part, a straight line. */
  readonly level: number;
  readonly sloped: number;
  /** Angles of one half, radians: of the level part and of the sloped part. */
  readonly level_span: number;
  readonly sloped_span: number;
  /** Breadth of the sloped part per girth: at any level it spans a straight `breadth` times the girth there. */
  readonly breadth: number;
  /** Both halves: all round the body. */
  readonly length: number;
}

const plain = (x: number): number => Number(x.toPrecision(6));

/**
 * The seam that runs level `back_drop` below the waist from centre back, for the share `start` of
 * half the girth, then straight to a point `front_drop` below the waist at centre front. Drops are
 * measured along the body. Refuses a hip too near for its girth, and a seam at or beyond the tip
 * of a cone that narrows downwards.
 */
export function developSeam(
  waist: number,
  hip: number,
  hip_drop: number,
  front_drop: number,
  back_drop = 0,
  start = 0.5,
): Seam {
  const angle = coneAngle(waist, hip, hip_drop);
  const back_girth = girthAt(waist, hip, hip_drop, back_drop, "back_drop");
  const front_girth = girthAt(waist, hip, hip_drop, front_drop, "front_drop");
  const apex = angle === 0 ? Number.POSITIVE_INFINITY : waist / angle;
  const sloped_span = (angle / 2) * (1 - start);
  // Two points at radii r and s, an angle φ apart, lie √((r − s)² + r·s·(2 sin φ/2)²) from each other.
  // Told in girths, r = girth/angle, nothing in it grows without bound as the cone nears a cylinder.
  const breadth = angle === 0 ? (1 - start) / 2 : (2 * Math.sin(sloped_span / 2)) / angle;
  const sloped = Math.sqrt((front_drop - back_drop) ** 2 + back_girth * front_girth * breadth ** 2);
  const level = (back_girth / 2) * start;
  return {
    angle,
    apex,
    back_radius: apex + back_drop,
    front_radius: apex + front_drop,
    back_girth,
    front_girth,
    level,
    sloped,
    level_span: (angle / 2) * start,
    sloped_span,
    breadth,
    length: 2 * (level + sloped),
  };
}

/**
 * The angle of the rolled-out body in radians. A flat disc has 2π, and no cone has more, so that
 * a girth can not change by more than 2π times the drop measured along the body.
 */
export function coneAngle(waist: number, hip: number, hip_drop: number): number {
  const angle = (hip - waist) / hip_drop;
  if (Math.abs(angle) >= 2 * Math.PI) {
    throw new Refusal(
      `hip_drop must be more than ${plain(Math.abs(hip - waist) / (2 * Math.PI))} to get from a waist of ${plain(waist)} to a hip of ${plain(hip)}, not ${plain(hip_drop)}`,
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
      `${name} must be ${level < 0 ? "more than" : "less than"} ${plain(limit)}, where a line from waist ${plain(waist)} to hip ${plain(hip)} comes to nothing, not ${plain(level)}`,
    );
  }
  return girth;
}

/**
 * Where a place on the body comes to lie on the flat: `level` below the waist and `share` of the
 * girth round from centre back (0.5 is centre front). The waist at centre back is (0, 0), centre
 * back runs down the y axis.
 */
export function onFlat(waist: number, angle: number, level: number, share: number): Point {
  const girth = waist + angle * level;
  if (straight(angle)) return [girth * share, level];
  const turn = angle * share;
  return [(girth * Math.sin(turn)) / angle, level - (2 * girth * Math.sin(turn / 2) ** 2) / angle];
}

/** A level line on the flat from one share of the girth to another: an arc about the apex. */
export function levelLine(waist: number, angle: number, level: number, from: number, to: number): Stroke {
  const start = onFlat(waist, angle, level, from);
  const end = onFlat(waist, angle, level, to);
  if (straight(angle)) return line(start, end);
  const girth = waist + angle * level;
  // Seen from an apex above, x grows as the turn from +x towards +y falls; from one below, as it grows.
  const sweep = -angle * (to - from);
  const radius = Math.abs(girth / angle);
  return { kind: "arc", from: start, to: end, centre: [0, -waist / angle], radius, sweep };
}

/** So near a cylinder that an arc and its chord differ by less than a part in 10¹². */
const straight = (angle: number): boolean => Math.abs(angle) < 1e-6;
