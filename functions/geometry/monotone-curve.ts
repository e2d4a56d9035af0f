/**
 * A smooth curve through points from left to right that rises only where the points rise and falls
 * only where they fall, so that it never swings above or below the points beside it.
 *
 * Each span is a cubic over x. The slope at an inner point is that of the parabola through it and
 * its neighbours, at most three times the gentler of the two slopes beside it, and level where the
 * points turn from rising to falling: Fritsch and Carlson, "Monotone Piecewise Cubic
 * Interpolation", SIAM Journal on Numerical Analysis 17 (1980), show that slopes between 0 and
 * three times a span's own keep the span monotone. The ends do not bend. Three points without such
 * a turn give the same curve as a thin strip of wood held at them, where that is monotone.
 */
import type { Edge, Point, Stroke } from "./strokes.ts";

/** The curve through at least two points whose x grows from each to the next. */
export function monotoneThrough(points: readonly Point[]): Edge {
  const spans = points.slice(1).map(([x], i) => x - points[i]![0]);
  const rises = spans.map((span, i) => (points[i + 1]![1] - points[i]![1]) / span);
  const last = spans.length;
  const inner = points.map((_, i) =>
    i === 0 || i === last ? 0 : innerSlope(spans[i - 1]!, rises[i - 1]!, spans[i]!, rises[i]!),
  );
  // Without bending at an end its slope follows from the one at the other end of the span.
  const slope = (i: number): number => {
    if (last === 1) return rises[0]!;
    if (i === 0) return (3 * rises[0]! - inner[1]!) / 2;
    if (i === last) return (3 * rises[last - 1]! - inner[last - 1]!) / 2;
    return inner[i]!;
  };
  return spans.map((span, i): Stroke => {
    const [from, to] = [points[i]!, points[i + 1]!];
    return {
      kind: "curve",
      from,
      c1: [from[0] + span / 3, from[1] + (slope(i) * span) / 3],
      c2: [to[0] - span / 3, to[1] - (slope(i + 1) * span) / 3],
      to,
    };
  });
}

function innerSlope(before: number, rise: number, after: number, next: number): number {
  if (rise * next <= 0) return 0;
  const parabola = (after * rise + before * next) / (before + after);
  return Math.sign(parabola) * Math.min(Math.abs(parabola), 3 * Math.abs(rise), 3 * Math.abs(next));
}
