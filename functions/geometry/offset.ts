/**
 * The offset of a stroke, a line that keeps a fixed distance from it. The offset of a line is a line
 * and that of an arc is an arc about the same centre, both exact. The offset of a cubic curve is a
 * row of cubic curves that stay within a tolerance of it.
 */
import { type Curve, direction, type Point, pointAt, type Stroke, velocity } from "./strokes.ts";

/** Thrown when there is no offset: the stroke bends with a smaller radius than the distance. */
export class BendTooTight extends Error {
  /** The tightest radius of bend towards that side. */
  readonly radius: number;
  constructor(radius: number) {
    super("the bend is tighter than the distance");
    this.radius = radius;
  }
}

/** The unit normal on the side `side`: 1 to the right of +x drawn to the right with y up, that is −y; −1 the other. */
export function normal(stroke: Stroke, share: number, side: 1 | -1): Point {
  const [dx, dy] = direction(stroke, share);
  const length = side * Math.sqrt(dx * dx + dy * dy);
  return [dy / length, -dx / length];
}

/** Strokes `away` from a stroke on the side of `normal`. Throws TooTight when it bends too tightly. */
export function offsetStroke(stroke: Stroke, away: number, side: 1 | -1, tolerance: number): Stroke[] {
  if (away === 0) return [stroke];
  const at = (share: number): Point => {
    const [x, y] = pointAt(stroke, share);
    const [nx, ny] = normal(stroke, share, side);
    return [x + away * nx, y + away * ny];
  };
  if (stroke.kind === "line") return [{ kind: "line", from: at(0), to: at(1) }];
  if (stroke.kind === "arc") {
    const radius = stroke.radius + side * Math.sign(stroke.sweep) * away;
    if (radius <= 1e-9 * stroke.radius) throw new BendTooTight(stroke.radius);
    return [{ ...stroke, from: at(0), to: at(1), radius }];
  }
  const tightest = smallestRadius(stroke, side);
  if (tightest <= away) throw new BendTooTight(tightest);
  return fitOffset(stroke, away, side, at, 0, 1, tolerance, 0);
}

/** Signed curvature at a share of a curve's parameter, towards the side of the offset: positive where the offset is shorter than the stroke. No point is made: it is asked in loops. */
function curvatureTowards({ from, c1, c2, to }: Curve, t: number, side: 1 | -1): number {
  const s = 1 - t;
  const a = 3 * s * s;
  const b = 6 * s * t;
  const c = 3 * t * t;
  const dx = a * (c1[0] - from[0]) + b * (c2[0] - c1[0]) + c * (to[0] - c2[0]);
  const dy = a * (c1[1] - from[1]) + b * (c2[1] - c1[1]) + c * (to[1] - c2[1]);
  const e = 6 * (1 - t);
  const f = 6 * t;
  const ddx = e * (c2[0] - 2 * c1[0] + from[0]) + f * (to[0] - 2 * c2[0] + c1[0]);
  const ddy = e * (c2[1] - 2 * c1[1] + from[1]) + f * (to[1] - 2 * c2[1] + c1[1]);
  const speed = Math.sqrt(dx * dx + dy * dy);
  return speed < 1e-12 ? 0 : (-side * (dx * ddy - dy * ddx)) / speed ** 3;
}

function smallestRadius(curve: Curve, side: 1 | -1): number {
  let most = 0;
  for (let i = 0; i <= 64; i += 1) {
    const here = curvatureTowards(curve, i / 64, side);
    if (here > most) most = here;
  }
  return 1 / most;
}

/** A cubic with the offset's ends and its speeds there, split in half until three places on it are within the tolerance. */
function fitOffset(
  curve: Curve,
  away: number,
  side: 1 | -1,
  at: (share: number) => Point,
  start: number,
  end: number,
  tolerance: number,
  depth: number,
): Curve[] {
  const reach = (end - start) / 3;
  const [from, to] = [at(start), at(end)];
  const speed = (t: number): Point => {
    const [dx, dy] = velocity(curve, t);
    const share = 1 - away * curvatureTowards(curve, t, side);
    return [dx * share * reach, dy * share * reach];
  };
  const [a, b] = [speed(start), speed(end)];
  const guess: Curve = {
    kind: "curve",
    from,
    c1: [from[0] + a[0], from[1] + a[1]],
    c2: [to[0] - b[0], to[1] - b[1]],
    to,
  };
  const strays = [0.25, 0.5, 0.75].some((share) => {
    const t = start + (end - start) * share;
    const [x, y] = pointAt(guess, share);
    const [px, py] = at(t);
    const [nx, ny] = normal(curve, t, side);
    return Math.abs((x - px) * nx + (y - py) * ny) > tolerance / 2;
  });
  if (!strays || depth === 10) return [guess];
  const middle = (start + end) / 2;
  return [
    ...fitOffset(curve, away, side, at, start, middle, tolerance, depth + 1),
    ...fitOffset(curve, away, side, at, middle, end, tolerance, depth + 1),
  ];
}
