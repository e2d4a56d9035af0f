/** Closed lines measured once, and whether one lies inside another. */
import { isInPolygon } from "../../../functions/geometry/point-in-polygon.ts";
import {
  type Bounds,
  boundingBox,
  flatten,
  type Point,
  pointBetween,
  signedArea,
  strokeLength,
} from "../../../functions/geometry/strokes.ts";
import type { Loop } from "./chain.ts";

export interface Measured {
  readonly line: Loop;
  readonly points: readonly Point[];
  readonly box: Bounds;
  readonly area: number;
  readonly length: number;
}

export function measured(line: Loop): Measured {
  const length = line.strokes.reduce((sum, stroke) => sum + strokeLength(stroke), 0);
  const points = [line.strokes[0]!.from, ...line.strokes.flatMap((stroke) => flatten(stroke, length / 4000))];
  return { line, points, box: boundingBox(points), area: Math.abs(signedArea(points)), length };
}

const reach = ({ left, right, low, high }: Bounds): number => Math.max(right - left, high - low);

function boxHolds(outer: Bounds, inner: Bounds): boolean {
  const slack = 1e-6 * reach(outer);
  return (
    inner.left >= outer.left - slack &&
    inner.right <= outer.right + slack &&
    inner.low >= outer.low - slack &&
    inner.high <= outer.high + slack
  );
}

/** How many places along a line are looked at, at first and at most. */
const FEW = 6;
const PLACES = 60;

/** The share of a line, 0 to 1, that lies inside a closed line. */
export function shareInside(outer: Measured, inner: Measured): number {
  const { box } = outer;
  if (
    inner.box.right < box.left ||
    inner.box.left > box.right ||
    inner.box.high < box.low ||
    inner.box.low > box.high
  )
    return 0;
  const sides = inner.points.length - 1;
  // A few places first: most lines lie wholly outside one another.
  const few = shareOf(outer, inner, Math.max(1, Math.ceil(sides / FEW)));
  return few === 0 ? 0 : shareOf(outer, inner, Math.max(1, Math.ceil(sides / PLACES)));
}

/** The same, measured only in the middle of every nth chord. */
function shareOf(outer: Measured, inner: Measured, step: number): number {
  let [within, all] = [0, 0];
  for (let i = 0; i + 1 < inner.points.length; i += step) {
    all += 1;
    if (isInPolygon(pointBetween(inner.points[i]!, inner.points[i + 1]!, 0.5), outer.points)) within += 1;
  }
  return within / all;
}

/** Whether a closed line lies inside another; a stretch of border that they share does not count against it. */
export const contains = (outer: Measured, inner: Measured): boolean =>
  outer !== inner &&
  outer.area > inner.area &&
  boxHolds(outer.box, inner.box) &&
  shareInside(outer, inner) > 0.5;

/** Whether two closed lines are the same line drawn twice. */
export function sameLine(a: Measured, b: Measured): boolean {
  const slack = 1e-6 * reach(a.box);
  return (
    Math.abs(a.area - b.area) <= slack * reach(a.box) &&
    Math.abs(a.length - b.length) <= 10 * slack &&
    (["left", "right", "low", "high"] as const).every((side) => Math.abs(a.box[side] - b.box[side]) <= slack)
  );
}

/** Whether a closed line is the rectangle of these bounds. */
export function fills({ box, area }: Measured, bounds: Bounds): boolean {
  const slack = 1e-6 * reach(bounds);
  return (
    Math.abs(area - (bounds.right - bounds.left) * (bounds.high - bounds.low)) <= slack * reach(bounds) &&
    (["left", "right", "low", "high"] as const).every((side) => Math.abs(box[side] - bounds[side]) <= slack)
  );
}
