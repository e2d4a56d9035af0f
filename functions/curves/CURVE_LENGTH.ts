import { define } from "../define.ts";
import { pointsOf } from "../drafting/coordinates.ts";
import { dimension } from "../drawing/shapes.ts";
import { refineDenseSpline, smoothClosed, smoothThrough } from "../geometry/smooth-curve.ts";
import type { Edge, Point } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { edgeLength } from "../pieces/piece.ts";

/** The curve through the points; round and smooth at its beginning too when the last point is the first again. */
function curveThrough(points: readonly Point[]): Edge {
  const [first, last] = [points[0]!, points.at(-1)!];
  const closed = points.length > 3 && first[0] === last[0] && first[1] === last[1];
  return refineDenseSpline(closed ? smoothClosed(points.slice(0, -1)) : smoothThrough(points), closed);
}

/**
 * Length of the smooth curve through points, in the book's unit: a cubic spline over the distances
 * from point to point, as a thin strip of wood held at the points lies (functions/geometry/). Two points
 * give a straight line; a list that ends with its first point is smooth all round. The more points
 * where it bends most, the nearer it is to the drawn line: points a tenth of the radius apart miss
 * less than a thousandth, two hundred round an ellipse less than a part in 10⁹. Source: geometry.
 */
export const CURVE_LENGTH = define({
  name: "CURVE_LENGTH",
  summary: "Length of a smooth curve through measured points, such as an armhole or a neckline.",
  source: "geometry: cubic spline over the distances between the points",
  words: "spline french curve armhole neckline sleeve cap measure curve points",
  takes: {
    xs: { kind: "length", about: "distance of each point to the right", from: -5000, to: 5000, many: true },
    ys: { kind: "length", about: "distance of each point downwards", from: -5000, to: 5000, many: true },
  },
  returns: "length",
  compute: ({ xs, ys }, { measure }) =>
    measure(
      "length",
      "along the smooth curve through the points",
      edgeLength(curveThrough(pointsOf(xs, ys, 2))),
    ),
  draw({ xs, ys }) {
    const points = pointsOf(xs, ys, 2);
    return [
      { kind: "edge", edge: curveThrough(points), role: "seam", shows: "length" },
      { kind: "marks", at: points, mark: "cross" },
      dimension(points[0]!, points.at(-1)!, { label: phrase`straight` }),
    ];
  },
  examples: [
    { given: { xs: [0, 3], ys: [0, 4] }, gives: 5, because: "through two points it is a straight line" },
    {
      given: { xs: [0, 1.339746, 5, 10], ys: [10, 5, 1.339746, 0] },
      gives: 15.70796,
      within: 0.02,
      because: "nearly a quarter circle of 10 cm radius, through four points",
      unit: "cm",
    },
  ],
});
