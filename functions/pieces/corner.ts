/**
 * Corners between offset edges: two runs of strokes that end near one corner of the sewing line are
 * trimmed or extended to their intersection. Both runs are given so that they END at the corner.
 */

import { type Intersection, intersections } from "../geometry/intersections.ts";
import {
  direction,
  distance,
  type Edge,
  line,
  type Point,
  type Stroke,
  strokePart,
} from "../geometry/strokes.ts";
import { reverseEdge } from "./edges.ts";

/** Where a run is trimmed: on one of its strokes, or on the straight line that extends it (`index` is then its length). */
interface Exit {
  readonly index: number;
  readonly share: number;
  readonly point: Point;
}

export interface EndsJoined {
  readonly a: Edge;
  readonly b: Edge;
  readonly point: Point;
}

/** How far beyond its end a run may be extended, in multiples of the greater allowance. */
const MAX_EXTENSION = 50;

/** A stroke shorter than this multiple of the allowance is what rounding made: no stroke of its own. */
const HAIR = 1e-9;

/**
 * Both runs trimmed to the intersection nearest to their ends, which may lie on the straight lines
 * that extend them. Null when they do not intersect.
 */
export function joinEnds(a: Edge, b: Edge, away: number): EndsJoined | null {
  const [longA, longB] = [extended(a, away * MAX_EXTENSION), extended(b, away * MAX_EXTENSION)];
  const steps = longA.length + longB.length - 2;
  for (let back = 0; back <= steps; back += 1) {
    let best: { exits: [Exit, Exit]; gap: number } | null = null;
    for (let i = Math.max(0, back - longB.length + 1); i <= Math.min(back, longA.length - 1); i += 1) {
      const [at, bt] = [longA.length - 1 - i, longB.length - 1 - (back - i)];
      for (const meeting of intersections(longA[at]!, longB[bt]!)) {
        const exits = exitsAt(meeting, at, bt);
        const gap = distance(meeting.point, a.at(-1)!.to) + distance(meeting.point, b.at(-1)!.to);
        if (!best || gap < best.gap) best = { exits, gap };
      }
    }
    if (best) {
      const [ea, eb] = best.exits;
      const hair = away * HAIR;
      return { a: trimmedAt(a, ea, hair), b: trimmedAt(b, eb, hair), point: ea.point };
    }
  }
  return null;
}

const exitsAt = ({ point, a, b }: Intersection, i: number, j: number): [Exit, Exit] => [
  { index: i, share: a, point },
  { index: j, share: b, point },
];

/** A run and the straight line that goes on from its end. */
function extended(run: Edge, far: number): Edge {
  const { to } = run.at(-1)!;
  const [dx, dy] = endDirection(run);
  return [...run, line(to, [to[0] + dx * far, to[1] + dy * far])];
}

function trimmedAt(run: Edge, { index, share, point }: Exit, hair: number): Edge {
  const end = run.at(-1)!;
  if (index === run.length)
    return distance(end.to, point) <= hair ? endingAt(run, point) : lengthened(run, point);
  const kept = run.slice(0, index);
  const last = strokePart(run[index]!, 0, share);
  if (distance(last.from, point) <= hair && kept.length > 0) return endingAt(kept, point);
  return [...kept, { ...last, to: point }];
}

/** A run whose last stroke ends at a point a hair away. */
const endingAt = (run: Edge, point: Point): Edge => [...run.slice(0, -1), { ...run.at(-1)!, to: point }];

/** A run with a straight line to a point that lies ahead of it: a straight last stroke is lengthened. */
function lengthened(run: Edge, point: Point): Edge {
  const last = run.at(-1)!;
  return last.kind === "line"
    ? [...run.slice(0, -1), line(last.from, point)]
    : [...run, line(last.to, point)];
}

/** A run with a straight line to any point. */
function extendedTo(run: Edge, point: Point): Edge {
  const last = run.at(-1)!;
  if (distance(last.to, point) === 0) return run;
  return isAhead(last, point) ? lengthened(run, point) : [...run, line(last.to, point)];
}

/** Does the point lie on a line stroke drawn out? */
function isAhead(stroke: Stroke, point: Point): boolean {
  const [dx, dy] = [stroke.to[0] - stroke.from[0], stroke.to[1] - stroke.from[1]];
  const [px, py] = [point[0] - stroke.to[0], point[1] - stroke.to[1]];
  return (
    Math.abs(dx * py - dy * px) <= 1e-9 * Math.hypot(dx, dy) * Math.hypot(px, py) && dx * px + dy * py > 0
  );
}

/** Two runs joined at their corner: the first as it is drawn, the second as it goes on from there. */
export interface CornerRuns {
  readonly first: Edge;
  readonly second: Edge;
}

/** How many times the allowance a mitre may stand out from its corner before it is cut square. */
const MITRE_LIMIT = 3;

/** The turn of the outline at a corner in radians, positive where it sticks out (`side` as in offset.ts). */
export function convexity(first: Edge, second: Edge, side: 1 | -1): number {
  const [ax, ay] = direction(first.at(-1)!, 1);
  const [bx, by] = direction(second[0]!, 0);
  return side * Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}

/**
 * The corner from run `first` into run `second` about `corner` of the sewing line: mitred; cut
 * square when the tip would stand out too far; a straight step where allowances of different
 * width run on in one line. Null when the runs do not meet: an inner corner that is too narrow.
 */
export function cornerBetween(
  first: Edge,
  second: Edge,
  corner: Point,
  away: number,
  turn: number,
): CornerRuns | null {
  const [end, start] = [first.at(-1)!.to, second[0]!.from];
  if (away === 0 || distance(end, start) <= 1e-9 * away) return { first, second };
  const step = (): CornerRuns => ({ first: extendedTo(first, start), second });
  if (Math.abs(turn) < 1e-6) return step();
  const joint = joinEnds(first, reverseEdge(second), away);
  if (turn < 0) return joint && { first: joint.a, second: reverseEdge(joint.b) };
  if (joint && distance(joint.point, corner) <= MITRE_LIMIT * away * (1 + 1e-9))
    return { first: joint.a, second: reverseEdge(joint.b) };
  // Sharper than a right angle both are drawn out to a tip: cut across it. Else one would be drawn
  // out far along the other: a step.
  return turn > Math.PI / 2 ? squareCorner(first, second, corner, MITRE_LIMIT * away) : step();
}

/** The tip cut square to its middle line, `out` from the corner. */
function squareCorner(first: Edge, second: Edge, corner: Point, out: number): CornerRuns | null {
  const back = reverseEdge(second);
  const [one, other] = [endDirection(first), endDirection(back)];
  const sum = Math.hypot(one[0] + other[0], one[1] + other[1]);
  const [ux, uy] = [(one[0] + other[0]) / sum, (one[1] + other[1]) / sum];
  const cutRun = (run: Edge, [dx, dy]: Point): Edge => {
    const { to } = run.at(-1)!;
    const left = out - ((to[0] - corner[0]) * ux + (to[1] - corner[1]) * uy);
    const far = left / (dx * ux + dy * uy);
    return extendedTo(run, [to[0] + dx * far, to[1] + dy * far]);
  };
  const [a, b] = [cutRun(first, one), cutRun(back, other)];
  return { first: [...a, line(a.at(-1)!.to, b.at(-1)!.to)], second: reverseEdge(b) };
}

/** The direction of a run's end, of length 1. */
export function endDirection(run: Edge): Point {
  const [dx, dy] = direction(run.at(-1)!, 1);
  const length = Math.hypot(dx, dy);
  return [dx / length, dy / length];
}

/**
 * A side run and a hem run, both ending at `corner`: the side cut goes to the hem's fold line and
 * from there on as its own mirror image about it. Null where the side lies too flat to the hem.
 */
export function hemCorner(
  side: Edge,
  hem: Edge,
  corner: Point,
  away: number,
  fold: Point,
): EndsJoined | null {
  const far = away * MAX_EXTENSION;
  const [tx, ty] = fold;
  const inner: Point = [corner[0] + tx * far, corner[1] + ty * far];
  const met = joinEnds(side, [line(inner, corner)], away);
  if (!met) return null;
  const [ox, oy] = endDirection(side);
  const { to } = side.at(-1)!;
  const beyond = (met.point[0] - to[0]) * ox + (met.point[1] - to[1]) * oy >= 0;
  const [dx, dy] = beyond ? [ox, oy] : endDirection(met.a);
  const lean = dx * tx + dy * ty;
  if (Math.abs(lean) > Math.sqrt(3) / 2) return null;
  const [rx, ry] = [dx - 2 * lean * tx, dy - 2 * lean * ty];
  const mirrored = line([met.point[0] + rx * far, met.point[1] + ry * far], met.point);
  const low = joinEnds(hem, [mirrored], away);
  if (!low) return null;
  const depth = (low.point[0] - met.point[0]) * rx + (low.point[1] - met.point[1]) * ry;
  if (depth <= 0 || depth > MITRE_LIMIT * away) return null;
  return { a: extendedTo(met.a, low.point), b: low.a, point: low.point };
}
