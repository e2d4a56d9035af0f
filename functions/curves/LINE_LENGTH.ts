import { define } from "../define.ts";
import { pointsOf } from "../drafting/coordinates.ts";
import { stroke } from "../drawing/shapes.ts";
import { distance } from "../geometry/strokes.ts";

/** Length of the straight lines from point to point, in the book's unit. Source: Pythagoras. */
export const LINE_LENGTH = define({
  name: "LINE_LENGTH",
  summary: "Length of straight lines from point to point.",
  source: "geometry",
  words: "distance between points diagonal straight polyline slope side",
  takes: {
    xs: { kind: "length", about: "distance of each point to the right", from: -5000, to: 5000, many: true },
    ys: { kind: "length", about: "distance of each point downwards", from: -5000, to: 5000, many: true },
  },
  returns: "length",
  compute({ xs, ys }, { measure }) {
    const points = pointsOf(xs, ys, 2);
    const length = points.slice(1).reduce((sum, point, i) => sum + distance(points[i]!, point), 0);
    return measure("length", "sum of the distances from point to point", length);
  },
  draw({ xs, ys }) {
    const points = pointsOf(xs, ys, 2);
    return [stroke(points, "seam", { shows: "length" }), { kind: "marks", at: points, mark: "cross" }];
  },
  examples: [
    { given: { xs: [0, 3, 3], ys: [0, 4, 10] }, gives: 11, because: "3 across and 4 down is 5, and 6 down" },
    { given: { xs: [2, 14], ys: [1, 6] }, gives: 13, because: "12 across and 5 down", unit: "cm" },
  ],
});
