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

/**
 * The armhole from the end of the shoulder, which runs from `top` to `tip`, through its `hollow` to the `side`. It
 * begins square to the shoulder and ends square to the side seam, which leaves it in the direction `down`, so that
 * the armholes of front and back are one smooth line once shoulder and side are sewn.
 */
export function armholeCurve(top: Point, tip: Point, hollow: Point, side: Point, down: Point): Edge {
  const leaving = squareTo(top, tip);
  const way = wayAtHollow(tip, leaving, hollow);
  return [upperArmhole(tip, leaving, hollow, way), lowerArmhole(hollow, way, side, down)];
}

/** The least reach of a handle, as a share of the chord. */
const LEAST_HANDLE = 0.25;

/**
 * The direction in which an armhole passes its hollow: straight down, as the drafts have it. Where the shoulder ends
 * hardly beyond the hollow or inside it, the direction slants outwards instead, just so far that the curve
 * bends one way all along: the tangents of its ends then meet a quarter of the chord from the shoulder.
 */
function wayAtHollow(from: Point, leaving: Point, to: Point): Point {
  const lean = ([x, y]: Point) => Math.atan2(x, y);
  const [chord, first] = [lean([to[0] - from[0], to[1] - from[1]]), lean(leaving)];
  const slant = Math.atan2(
    Math.sin(chord) - LEAST_HANDLE * Math.sin(first),
    Math.cos(chord) - LEAST_HANDLE * Math.cos(first),
  );
  return slant > 0 ? [Math.sin(slant), Math.cos(slant)] : [0, 1];
}

/** The upper part of an armhole. Its handles reach a third of the way. */
function upperArmhole(from: Point, leaving: Point, to: Point, way: Point): Curve {
  const reach = distance(from, to) / 3;
  return bend(from, leaving, to, way, reach, reach);
}

/** The lower part of an armhole, a quarter of an oval that ends square to the side seam. */
const lowerArmhole = (from: Point, way: Point, to: Point, [dx, dy]: Point): Curve =>
  bend(from, way, to, [dy, -dx], QUARTER_CIRCLE * (to[1] - from[1]), QUARTER_CIRCLE * (to[0] - from[0]));

/**
 * A curve with its directions at both ends and the reach of its handles. A handle stops where the tangents of both
 * ends meet, so that the curve bends one way, but it keeps a quarter of the chord, so that the curve is nowhere too
 * tight for an allowance: a back whose shoulder ends far beyond its width turns in a little before it is hollow.
 */
function bend(from: Point, leaving: Point, to: Point, arriving: Point, first: number, last: number): Curve {
  const cross = ([ax, ay]: Point, [bx, by]: Point) => ax * by - ay * bx;
  const chord: Point = [to[0] - from[0], to[1] - from[1]];
  const least = LEAST_HANDLE * distance(from, to);
  const turn = cross(leaving, arriving);
  const upTo = (meeting: number, reach: number) =>
    meeting > 0 ? Math.min(reach, Math.max(meeting, least)) : reach;
  return {
    kind: "curve",
    from,
    c1: pointAhead(from, leaving, upTo(cross(chord, arriving) / turn, first)),
    c2: pointAhead(to, arriving, -upTo(cross(leaving, chord) / turn, last)),
    to,
  };
}
