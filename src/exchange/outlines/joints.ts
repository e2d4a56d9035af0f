/** Lines made to meet where their ends nearly do. */
import { arcCurves } from "../../../functions/geometry/path.ts";
import {
  direction,
  distance,
  type Edge,
  type Point,
  type Stroke,
} from "../../../functions/geometry/strokes.ts";
import { reverseEdge } from "../../../functions/pieces/edges.ts";

/** Runs that follow one another round, each begun where the one before ends. */
export function joined(runs: readonly Edge[]): Edge {
  const meetings = runs.map((run, i) => meeting(runs.at(i - 1)!.at(-1)!, run[0]!));
  return runs.flatMap((run, i) => endedAt(begunAt(run, meetings[i]!), meetings[(i + 1) % runs.length]!));
}

/** Where two strokes are made to meet: where they would if both went straight on, when that is near, else half way. */
function meeting(before: Stroke, after: Stroke): Point {
  const [a, b] = [before.to, after.from];
  const gap = distance(a, b);
  if (gap === 0) return a;
  const [ux, uy] = direction(before, 1);
  const [vx, vy] = direction(after, 0);
  const cross = ux * vy - uy * vx;
  const along = ((b[0] - a[0]) * vy - (b[1] - a[1]) * vx) / cross;
  const point: Point = [a[0] + ux * along, a[1] + uy * along];
  const isNear = distance(point, a) <= 1.5 * gap && distance(point, b) <= 1.5 * gap;
  return isNear ? point : [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

/** Where an arc's end may be moved by without its centre: rounding errors of the arc's own figures. */
const ROUNDING = 1e-9;

/** The same run with its beginning moved to a point nearby. */
function begunAt(run: Edge, at: Point): Edge {
  const [first, ...others] = run as [Stroke, ...Stroke[]];
  const gap = distance(first.from, at);
  if (gap === 0) return run;
  if (first.kind === "line" || (first.kind === "arc" && gap <= ROUNDING * first.radius))
    return [{ ...first, from: at }, ...others];
  const [curve, ...more] = first.kind === "arc" ? arcCurves(first, Math.PI / 12) : [first];
  const [dx, dy] = [at[0] - curve!.from[0], at[1] - curve!.from[1]];
  return [{ ...curve!, from: at, c1: [curve!.c1[0] + dx, curve!.c1[1] + dy] }, ...more, ...others];
}

const endedAt = (run: Edge, at: Point): Edge => reverseEdge(begunAt(reverseEdge(run), at));
