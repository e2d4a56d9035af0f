/** A cubic curve from one point to the next, as an evenly bent curve runs between them. */

import { pointAhead } from "./constant-curvature.ts";
import type { Curve, Point } from "./strokes.ts";

/** A point on a curve, and how far the curve goes there for each unit of its parameter. */
interface CurvePoint {
  readonly at: Point;
  readonly speed: Point;
}

/**
 * The cubic curve from one point to the next. Its handles are as long as those of an arc that turns by the
 * same angle, 4/3 · tan(angle/4) of the radius: then it follows an evenly bent curve about a hundred times
 * closer than with handles of a third of the span.
 */
export function curveBetween(begin: CurvePoint, end: CurvePoint, span: number): Curve {
  const [[ax, ay], [bx, by]] = [begin.speed, end.speed];
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  const third = turn === 0 ? span / 3 : ((4 / 3) * Math.tan(turn / 4) * span) / turn;
  return {
    kind: "curve",
    from: begin.at,
    c1: pointAhead(begin.at, begin.speed, third),
    c2: pointAhead(end.at, end.speed, -third),
    to: end.at,
  };
}
