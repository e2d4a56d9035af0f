/**
 * Smooth curves through points: a natural cubic spline over the distances from point to point,
 * the way a thin strip of wood lies that is held at the points and free at its ends (no bending
 * there). A closed one bends on through its beginning. Each span is one cubic curve, exactly.
 *
 * On a curve sampled evenly the error falls with the fourth power of the spacing away from the
 * ends (de Boor, A Practical Guide to Splines); two points give a straight line.
 */
import { distance, line, type Point, type Stroke } from "./geometry.ts";
import type { Edge } from "./piece.ts";

/** The curve through the points from the first to the last. Points must differ from the next. */
export function smoothThrough(points: readonly Point[]): Edge {
  if (points.length < 3) return [line(points[0]!, points[1]!)];
  const spans = points.slice(1).map((point, i) => distance(points[i]!, point));
  const slopes = ([0, 1] as const).map((axis) =>
    naturalSlopes(
      points.map((point) => point[axis]),
      spans,
    ),
  );
  return strokesOf(points, spans, slopes);
}

/** The closed curve through the points, from the first round to the first. */
export function smoothRound(points: readonly Point[]): Edge {
  const ring = [...points, points[0]!];
  const spans = ring.slice(1).map((point, i) => distance(ring[i]!, point));
  const slopes = ([0, 1] as const).map((axis) =>
    closedSlopes(
      points.map((point) => point[axis]),
      spans,
    ),
  );
  return strokesOf(
    ring,
    spans,
    slopes.map((list) => [...list, list[0]!]),
  );
}

function strokesOf(
  points: readonly Point[],
  spans: readonly number[],
  slopes: readonly (readonly number[])[],
): Stroke[] {
  return spans.map((span, i) => {
    const [from, to] = [points[i]!, points[i + 1]!];
    const third = span / 3;
    return {
      kind: "curve",
      from,
      c1: [from[0] + slopes[0]![i]! * third, from[1] + slopes[1]![i]! * third],
      c2: [to[0] - slopes[0]![i + 1]! * third, to[1] - slopes[1]![i + 1]! * third],
      to,
    };
  });
}

/** Slopes at the points: continuous bending within, none at the two ends. One tridiagonal system. */
function naturalSlopes(values: readonly number[], spans: readonly number[]): number[] {
  const n = values.length;
  const rise = spans.map((span, i) => (values[i + 1]! - values[i]!) / span);
  const under = [0];
  const middle = [2];
  const over = [1];
  const right = [3 * rise[0]!];
  for (let i = 1; i < n - 1; i += 1) {
    const [before, after] = [spans[i - 1]!, spans[i]!];
    under.push(after);
    middle.push(2 * (before + after));
    over.push(before);
    right.push(3 * (after * rise[i - 1]! + before * rise[i]!));
  }
  under.push(1);
  middle.push(2);
  over.push(0);
  right.push(3 * rise[n - 2]!);
  return tridiagonal(under, middle, over, right);
}

/** Slopes of a closed curve: the same equations all round, the two corner terms by Sherman and Morrison. */
function closedSlopes(values: readonly number[], spans: readonly number[]): number[] {
  const n = values.length;
  const rise = spans.map((span, i) => (values[(i + 1) % n]! - values[i]!) / span);
  const at = (i: number) => ({ before: spans[(i + n - 1) % n]!, after: spans[i]! });
  const under = spans.map((_, i) => at(i).after);
  const over = spans.map((_, i) => at(i).before);
  const middle = spans.map((_, i) => 2 * (at(i).before + at(i).after));
  const right = spans.map((_, i) => 3 * (at(i).after * rise[(i + n - 1) % n]! + at(i).before * rise[i]!));
  // The corners: the first equation also holds the last slope, the last one the first slope.
  const [corner, other] = [under[0]!, over[n - 1]!];
  const pivot = -middle[0]!;
  const changed = [...middle];
  changed[0] = middle[0]! - pivot;
  changed[n - 1] = middle[n - 1]! - (corner * other) / pivot;
  const aside = right.map((_, i) => (i === 0 ? pivot : i === n - 1 ? other : 0));
  const found = tridiagonal(under, changed, over, right);
  const lean = tridiagonal(under, changed, over, aside);
  const share =
    (found[0]! + (corner * found[n - 1]!) / pivot) / (1 + lean[0]! + (corner * lean[n - 1]!) / pivot);
  return found.map((value, i) => value - share * lean[i]!);
}

/** Solves a tridiagonal system by elimination; `under[0]` and the last of `over` are not used. */
function tridiagonal(
  under: readonly number[],
  middle: readonly number[],
  over: readonly number[],
  right: readonly number[],
): number[] {
  const n = right.length;
  const above: number[] = [];
  const solved: number[] = [];
  for (let i = 0; i < n; i += 1) {
    const below = i === 0 ? 0 : under[i]!;
    const pivot = middle[i]! - below * (above[i - 1] ?? 0);
    above.push(over[i]! / pivot);
    solved.push((right[i]! - below * (solved[i - 1] ?? 0)) / pivot);
  }
  for (let i = n - 2; i >= 0; i -= 1) solved[i]! -= above[i]! * solved[i + 1]!;
  return solved;
}
