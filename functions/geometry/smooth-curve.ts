/**
 * Smooth curves through points: a cubic spline over the distances from point to point, the way a
 * thin strip of wood lies that is held at the points. At the ends it goes on bending as it does
 * just before them: the first two spans are one cubic, and the last two (the "not a knot" end of
 * de Boor, A Practical Guide to Splines). A closed one bends on through its beginning.
 *
 * On a curve sampled evenly the error falls with the fourth power of the spacing (de Boor); two
 * points give a straight line, three a parabola.
 */
import { pointAhead } from "./constant-curvature.ts";
import {
  type Curve,
  distance,
  type Edge,
  line,
  type Point,
  pointAt,
  type Stroke,
  velocity,
} from "./strokes.ts";

/** The curve through the points from the first to the last. Points must differ from the next. */
export function smoothThrough(points: readonly Point[]): Edge {
  if (points.length < 3) return [line(points[0]!, points[1]!)];
  const spans = points.slice(1).map((point, i) => distance(points[i]!, point));
  const slopes = ([0, 1] as const).map((axis) =>
    openSlopes(
      points.map((point) => point[axis]),
      spans,
    ),
  );
  return curvesFromSlopes(points, spans, slopes);
}

/** The closed curve through the points, from the first round to the first. */
export function smoothClosed(points: readonly Point[]): Edge {
  const ring = [...points, points[0]!];
  const spans = ring.slice(1).map((point, i) => distance(ring[i]!, point));
  const slopes = ([0, 1] as const).map((axis) =>
    closedSlopes(
      points.map((point) => point[axis]),
      spans,
    ),
  );
  return curvesFromSlopes(
    ring,
    spans,
    slopes.map((list) => [...list, list[0]!]),
  );
}

/** Most turn of a span, in radians, up to which it counts as dense; twice as much no longer counts at all. */
const DENSE = 0.15;

/**
 * The same curve, nearer the one that densely measured points were taken from. A cubic misses what
 * is beyond its powers: in each span the fourth derivative's share, f⁗/24 · (t(1 − t))² over the
 * span's length to the fourth, and the spline's own third derivatives say how great f⁗ is. Each
 * span becomes three cubics with that put in. Where points lie too far apart to know it, a span
 * keeps its shape.
 */
export function refineDenseSpline(edge: Edge, closed: boolean): Edge {
  const curves = edge.filter((stroke) => stroke.kind === "curve");
  if (curves.length < 5) return edge;
  const spans = curves.map(({ from, to }) => distance(from, to));
  const third = (curve: Curve, i: number): Point =>
    ([0, 1] as const).map(
      (axis) =>
        (6 * (curve.to[axis] - curve.from[axis] + 3 * (curve.c1[axis] - curve.c2[axis]))) / spans[i]! ** 3,
    ) as [number, number];
  const thirds = curves.map(third);
  const n = curves.length;
  // At a point the change of the third derivative over half of both spans. At a free end, where the
  // two last spans are one cubic, the value at the next point is used.
  const fourth = (k: number): Point => {
    const at = closed ? k % n : Math.min(Math.max(k, 2), n - 2);
    const before = (at + n - 1) % n;
    const half = (spans[at]! + spans[before]!) / 2;
    return [(thirds[at]![0] - thirds[before]![0]) / half, (thirds[at]![1] - thirds[before]![1]) / half];
  };
  return curves.flatMap((curve, i) => {
    const [ax, ay] = velocity(curve, 0);
    const [bx, by] = velocity(curve, 1);
    const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    const share = Math.min(1, Math.max(0, 2 - turn / DENSE));
    if (share === 0) return [curve];
    const [f, g] = [fourth(i), fourth(i + 1)];
    const reach = (share * spans[i]! ** 4) / 48;
    const bump: Point = [(f[0] + g[0]) * reach, (f[1] + g[1]) * reach];
    const at = (t: number): Point => pointAhead(pointAt(curve, t), bump, (t * (1 - t)) ** 2);
    const speed = (t: number): Point => pointAhead(velocity(curve, t), bump, 2 * t * (1 - t) * (1 - 2 * t));
    return [0, 1, 2].map((part): Stroke => {
      const [a, b] = [part / 3, (part + 1) / 3];
      const [from, to] = [at(a), at(b)];
      return {
        kind: "curve",
        from,
        c1: pointAhead(from, speed(a), 1 / 9),
        c2: pointAhead(to, speed(b), -1 / 9),
        to,
      };
    });
  });
}

function curvesFromSlopes(
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

/** Slopes at the points: continuous bending within, one cubic over the two spans at either end. */
function openSlopes(values: readonly number[], spans: readonly number[]): number[] {
  const n = values.length;
  const rise = spans.map((span, i) => (values[i + 1]! - values[i]!) / span);
  if (n === 3) {
    const middle = (spans[1]! * rise[0]! + spans[0]! * rise[1]!) / (spans[0]! + spans[1]!);
    return [2 * rise[0]! - middle, middle, 2 * rise[1]! - middle];
  }
  // The end equation of one cubic over spans a and b, rises r and s, from the end inwards.
  const end = (a: number, b: number, r: number, s: number) => ((3 * a + 2 * b) * b * r + a * a * s) / (a + b);
  const under = [0];
  const middle = [spans[1]!];
  const over = [spans[0]! + spans[1]!];
  const right = [end(spans[0]!, spans[1]!, rise[0]!, rise[1]!)];
  for (let i = 1; i < n - 1; i += 1) {
    const [before, after] = [spans[i - 1]!, spans[i]!];
    under.push(after);
    middle.push(2 * (before + after));
    over.push(before);
    right.push(3 * (after * rise[i - 1]! + before * rise[i]!));
  }
  under.push(spans[n - 2]! + spans[n - 3]!);
  middle.push(spans[n - 3]!);
  over.push(0);
  right.push(end(spans[n - 2]!, spans[n - 3]!, rise[n - 2]!, rise[n - 3]!));
  return tridiagonal(under, middle, over, right);
}

/** Slopes of a closed curve: the same equations at every point, the two corner terms by the Sherman-Morrison formula. */
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
