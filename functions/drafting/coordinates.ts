/** Points given in two columns of cells, x across the grain and y along it. */

import type { Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

/** The points; refuses columns of unequal length, too few points, and two equal points in succession. */
export function pointsOf(xs: readonly number[], ys: readonly number[], least: number): Point[] {
  if (xs.length !== ys.length)
    throw new Refusal(
      phrase`xs and ys must have the same number of values, not ${xs.length} and ${ys.length}`,
    );
  if (xs.length < least) throw new Refusal(phrase`xs must have at least ${least} values, not ${xs.length}`);
  if (xs.length > 2000) throw new Refusal(phrase`xs must have at most 2000 values, not ${xs.length}`);
  const points = xs.map((x, i): Point => [x, ys[i]!]);
  const twice = points.findIndex(([x, y], i) => i > 0 && x === points[i - 1]![0] && y === points[i - 1]![1]);
  if (twice > 0)
    throw new Refusal(
      phrase`xs and ys put point ${twice} and point ${twice + 1} at the same place: leave one of them out`,
    );
  return points;
}
