/** The neckline and the armhole of a bodice foundation. Both are square to the shoulder, so that front and back meet smoothly there. */

import { pointAhead } from "../geometry/constant-curvature.ts";
import { type Curve, distance, type Edge, type Point, QUARTER_CIRCLE, toward } from "../geometry/strokes.ts";

/** The direction square to the shoulder, into the piece. */
function squareTo(top: Point, tip: Point): Point {
  const [dx, dy] = toward(top, tip);
  return [-dy, dx];
}

/**
 * The neckline from the centre, where it is level, to the shoulder, which runs from `top` to `tip`. `high` and `wide`
 * are the shares of its height and breadth that the handles reach; those of the shallow back neck give it no
 * hollow tighter than a radius of about 1 in, so that it takes usual allowances.
 */
export function neckline(centre: Point, top: Point, tip: Point, high: number, wide: number): Edge {
  return [
    {
      kind: "curve",
      from: centre,
      c1: [centre[0] + wide * (top[0] - centre[0]), centre[1]],
      c2: pointAhead(top, squareTo(top, tip), high * (centre[1] - top[1])),
      to: top,
    },
  ];
}

/** The armhole from the end of the shoulder through its `hollow`, where it runs straight down, to the side, where it is level. */
export const armholeCurve = (top: Point, tip: Point, hollow: Point, side: Point, inch: number): Edge => [
  upperArmhole(tip, squareTo(top, tip), hollow, inch),
  quarterOval(hollow, side),
];

/**
 * The upper part of an armhole. Its handles reach a third of the way. The handle at the shoulder is shorter where the
 * shoulder ends hardly beyond the hollow, so that the curve does not swing inside it; but it is long enough, as far as
 * a third of the way allows, for the curve to begin with a radius of 1 in, so that it takes usual allowances.
 */
function upperArmhole(from: Point, leaving: Point, to: Point, inch: number): Curve {
  const reach = distance(from, to) / 3;
  const lower: Point = [to[0], to[1] - reach];
  const inwards = Math.max(1e-9, -leaving[0]);
  // A cubic begins with a radius of 3/2 of its handle squared, over the distance of its second handle from the first one's line.
  const aside = leaving[1] * (lower[0] - from[0]) - leaving[0] * (lower[1] - from[1]);
  const roundest = Math.sqrt((2 / 3) * Math.max(0, aside) * inch);
  const first = Math.min(reach, Math.max(0.6 * reach, roundest, (from[0] - to[0]) / inwards));
  return { kind: "curve", from, c1: pointAhead(from, leaving, first), c2: lower, to };
}

/** A quarter of an oval that begins straight down and ends level. */
function quarterOval(from: Point, to: Point): Curve {
  return {
    kind: "curve",
    from,
    c1: [from[0], from[1] + QUARTER_CIRCLE * (to[1] - from[1])],
    c2: [to[0] - QUARTER_CIRCLE * (to[0] - from[0]), to[1]],
    to,
  };
}
