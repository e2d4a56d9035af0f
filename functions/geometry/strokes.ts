/**
 * Plane geometry for outlines: points, polylines, and the three kinds of stroke an outline is
 * drawn with (straight, circular arc, cubic curve). Units are the caller's; angles are radians
 * here and nowhere else.
 */

/** A place in the plane: x across the grain, y along it. */
export type Point = readonly [x: number, y: number];

/** One stroke of an outline from `from` to `to`. */
export type Stroke =
  | { readonly kind: "line"; readonly from: Point; readonly to: Point }
  | {
      readonly kind: "arc";
      readonly from: Point;
      readonly to: Point;
      readonly centre: Point;
      readonly radius: number;
      /** The angle travelled, signed: positive turns from +x towards +y. */
      readonly sweep: number;
    }
  | {
      readonly kind: "curve";
      readonly from: Point;
      readonly c1: Point;
      readonly c2: Point;
      readonly to: Point;
    };

/** A run of strokes head to tail: one edge of an outline, or one line marked on it. */
export type Edge = readonly Stroke[];

export type Curve = Extract<Stroke, { kind: "curve" }>;

export const distance = (a: Point, b: Point): number => hypotenuse(b[0] - a[0], b[1] - a[1]);

/** The same as Math.hypot, and many times faster; the figures of a pattern are far from overflowing a double. */
const hypotenuse = (x: number, y: number): number => Math.sqrt(x * x + y * y);

export const pointBetween = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

/** The unit vector from one point to another. */
export function toward(from: Point, to: Point): Point {
  const long = distance(from, to);
  return [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
}

/** How far the handles of a curve reach that is a quarter of a circle of radius 1, to 3 parts in 10 000. */
export const QUARTER_CIRCLE = 0.5522847498;

/** The point at `radius` and `angle` (radians, from +x towards +y) about `centre`. */
export const polarPoint = (centre: Point, radius: number, angle: number): Point => [
  centre[0] + radius * Math.cos(angle),
  centre[1] + radius * Math.sin(angle),
];

export const degrees = (radians: number): number => (radians * 180) / Math.PI;
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;

export function line(from: Point, to: Point): Stroke {
  return { kind: "line", from, to };
}

/** An arc about `centre` from one angle to another (radians; the sign of the difference is the way round). */
export function arc(centre: Point, radius: number, start: number, end: number): Stroke {
  const from = polarPoint(centre, radius, start);
  return { kind: "arc", from, to: polarPoint(centre, radius, end), centre, radius, sweep: end - start };
}

/** The point at `share` (0 to 1) of a stroke's own parameter. */
export function pointAt(stroke: Stroke, share: number): Point {
  if (stroke.kind === "line") return pointBetween(stroke.from, stroke.to, share);
  if (stroke.kind === "arc") {
    if (share === 0) return stroke.from;
    if (share === 1) return stroke.to;
    const { centre, radius, from, sweep } = stroke;
    return polarPoint(centre, radius, Math.atan2(from[1] - centre[1], from[0] - centre[0]) + sweep * share);
  }
  const { from, c1, c2, to } = stroke;
  const s = 1 - share;
  const a = s * s * s;
  const b = 3 * s * s * share;
  const c = 3 * s * share * share;
  const d = share * share * share;
  return [a * from[0] + b * c1[0] + c * c2[0] + d * to[0], a * from[1] + b * c1[1] + c * c2[1] + d * to[1]];
}

/** The direction a stroke runs in at `share`, as a vector (not of unit length; zero only on a point). */
export function direction(stroke: Stroke, share: number): Point {
  if (stroke.kind === "line") return [stroke.to[0] - stroke.from[0], stroke.to[1] - stroke.from[1]];
  if (stroke.kind === "arc") {
    const [x, y] = pointAt(stroke, share);
    const way = Math.sign(stroke.sweep);
    return [-(y - stroke.centre[1]) * way, (x - stroke.centre[0]) * way];
  }
  const tangent = velocity(stroke, share);
  if (Math.hypot(...tangent) > 1e-12) return tangent;
  const { from, c1, c2, to } = stroke;
  return share < 0.5 ? [c2[0] - from[0], c2[1] - from[1]] : [to[0] - c1[0], to[1] - c1[1]];
}

/** A cubic's first derivative. */
export function velocity({ from, c1, c2, to }: Curve, t: number): Point {
  const s = 1 - t;
  const a = 3 * s * s;
  const b = 6 * s * t;
  const c = 3 * t * t;
  return [
    a * (c1[0] - from[0]) + b * (c2[0] - c1[0]) + c * (to[0] - c2[0]),
    a * (c1[1] - from[1]) + b * (c2[1] - c1[1]) + c * (to[1] - c2[1]),
  ];
}

/** How fast a stroke is drawn at a share of its own parameter: length per share. */
export const speedAt = (stroke: Stroke, share: number): number =>
  stroke.kind === "curve" ? curveSpeed(stroke, share) : strokeLength(stroke);

/** The length of `velocity`, for loops: no point is made. */
function curveSpeed({ from, c1, c2, to }: Curve, t: number): number {
  const s = 1 - t;
  const a = 3 * s * s;
  const b = 6 * s * t;
  const c = 3 * t * t;
  return hypotenuse(
    a * (c1[0] - from[0]) + b * (c2[0] - c1[0]) + c * (to[0] - c2[0]),
    a * (c1[1] - from[1]) + b * (c2[1] - c1[1]) + c * (to[1] - c2[1]),
  );
}

/** The part of a stroke between two shares of its own parameter. */
export function strokePart(stroke: Stroke, start: number, end: number): Stroke {
  if (start === 0 && end === 1) return stroke;
  const from = pointAt(stroke, start);
  const to = pointAt(stroke, end);
  if (stroke.kind === "line") return { kind: "line", from, to };
  if (stroke.kind === "arc") return { ...stroke, from, to, sweep: stroke.sweep * (end - start) };
  const reach = (end - start) / 3;
  const [ax, ay] = velocity(stroke, start);
  const [bx, by] = velocity(stroke, end);
  return {
    kind: "curve",
    from,
    c1: [from[0] + ax * reach, from[1] + ay * reach],
    c2: [to[0] - bx * reach, to[1] - by * reach],
    to,
  };
}

/** Five-point Gauss-Legendre abscissae and weights on [-1, 1] (Abramowitz & Stegun, table 25.4). */
const GAUSS: readonly (readonly [number, number])[] = [
  [0, 128 / 225],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
];

function gaussLegendre(speed: (t: number) => number, from: number, to: number): number {
  const half = (to - from) / 2;
  const middle = (from + to) / 2;
  let sum = 0;
  for (let i = 0; i < GAUSS.length; i += 1) sum += GAUSS[i]![1] * speed(middle + half * GAUSS[i]![0]);
  return sum * half;
}

function integrateHalves(
  speed: (t: number) => number,
  from: number,
  to: number,
  whole: number,
  slack: number,
  depth: number,
): number {
  const middle = (from + to) / 2;
  const left = gaussLegendre(speed, from, middle);
  const right = gaussLegendre(speed, middle, to);
  // Written as "not greater", the test also ends the recursion when a figure is NaN.
  if (depth === 0 || !(Math.abs(left + right - whole) > slack)) return left + right;
  return (
    integrateHalves(speed, from, middle, left, slack, depth - 1) +
    integrateHalves(speed, middle, to, right, slack, depth - 1)
  );
}

/**
 * Integral of a smooth function by halving five-point rules until two agree to about 13 figures of the
 * whole: where a curve turns back as sharply as a needle, its parts never agree to so many of their own.
 */
export function integrate(f: (t: number) => number, from: number, to: number): number {
  const whole = gaussLegendre(f, from, to);
  return integrateHalves(f, from, to, whole, 1e-13 * Math.max(1e-9, Math.abs(whole)), 24);
}

/** Length of a stroke. Lines and arcs exact; curves to about 12 figures. */
export function strokeLength(stroke: Stroke): number {
  if (stroke.kind === "line") return distance(stroke.from, stroke.to);
  if (stroke.kind === "arc") return stroke.radius * Math.abs(stroke.sweep);
  const speed = (t: number) => curveSpeed(stroke, t);
  // Where a curve almost stops and turns back, its speed has a kink; the integral is split there.
  const { from, c1, c2, to } = stroke;
  const slow = (distance(from, c1) + distance(c1, c2) + distance(c2, to)) / 20;
  const stops = axisExtremes(stroke).filter((t) => speed(t) < slow);
  const cuts = [0, ...stops.sort((a, b) => a - b), 1];
  return cuts.slice(1).reduce((sum, cut, i) => sum + integrate(speed, cuts[i]!, cut), 0);
}

/** The shares inside a cubic at which its tangent is parallel to an axis: its extremes in x and in y. */
export function axisExtremes({ from, c1, c2, to }: Curve): number[] {
  return ([0, 1] as const).flatMap((i) => {
    const a = to[i] - 3 * c2[i] + 3 * c1[i] - from[i];
    const b = 2 * (c2[i] - 2 * c1[i] + from[i]);
    const c = c1[i] - from[i];
    // The root of the greater sum first, the other from their product: nothing cancels as a nears 0.
    const sum = -(b + (b < 0 ? -1 : 1) * Math.sqrt(b * b - 4 * a * c)) / 2;
    return [sum / a, c / sum].filter((share) => share > 0 && share < 1);
  });
}

/** Twice the signed area between a stroke and the origin: ∫ x dy − y dx. Exact for all three kinds. */
export function doubleSignedArea(stroke: Stroke): number {
  const { from, to } = stroke;
  if (stroke.kind === "line") return from[0] * to[1] - to[0] * from[1];
  if (stroke.kind === "arc") {
    // The chord plus the segment beyond it: this stays accurate for an arc that is nearly straight.
    return from[0] * to[1] - to[0] * from[1] + stroke.radius ** 2 * angleLessSine(stroke.sweep);
  }
  // A cubic's x dy − y dx is of the fifth degree: three-point and above rules give it exactly.
  let sum = 0;
  for (let i = 0; i < GAUSS.length; i += 1) {
    const t = 0.5 + 0.5 * GAUSS[i]![0];
    const at = pointAt(stroke, t);
    const way = velocity(stroke, t);
    sum += GAUSS[i]![1] * (at[0] * way[1] - at[1] * way[0]);
  }
  return sum * 0.5;
}

/** An angle minus its sine, without loss of digits where the two are nearly equal. */
function angleLessSine(angle: number): number {
  if (Math.abs(angle) > 0.05) return angle - Math.sin(angle);
  const square = angle * angle;
  return ((angle * square) / 6) * (1 - (square / 20) * (1 - (square / 42) * (1 - square / 72)));
}

/** Points along a stroke, its start left out, so close that no chord strays more than `tolerance`. */
export function flatten(stroke: Stroke, tolerance: number): Point[] {
  if (stroke.kind === "line") return [stroke.to];
  let count: number;
  if (stroke.kind === "arc") {
    const ratio = Math.max(-1, 1 - tolerance / Math.max(stroke.radius, tolerance));
    count = Math.ceil(Math.abs(stroke.sweep) / (2 * Math.acos(ratio) || 1e-3));
  } else {
    const { from, c1, c2, to } = stroke;
    const bend = Math.max(
      Math.hypot(from[0] - 2 * c1[0] + c2[0], from[1] - 2 * c1[1] + c2[1]),
      Math.hypot(c1[0] - 2 * c2[0] + to[0], c1[1] - 2 * c2[1] + to[1]),
    );
    count = Math.ceil(Math.sqrt((3 * bend) / (4 * tolerance)));
  }
  count = Math.min(Math.max(count, 1), 2000);
  const points: Point[] = [];
  for (let i = 1; i <= count; i += 1) points.push(pointAt(stroke, i / count));
  return points;
}

/** Signed area of a closed polygon: positive when it runs from +x towards +y. */
export function signedArea(points: readonly Point[]): number {
  // Measured from the first point, so that a polygon far from (0, 0) loses no digits.
  const [x, y] = points[0] ?? [0, 0];
  let twice = 0;
  for (let i = 1; i + 1 < points.length; i += 1) {
    const a = points[i]!;
    const b = points[i + 1]!;
    twice += (a[0] - x) * (b[1] - y) - (b[0] - x) * (a[1] - y);
  }
  return twice / 2;
}

/** The box round some points: least and greatest x and y. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export function boundingBox(points: readonly Point[]): Bounds {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 1) {
    const x = points[i]![0];
    const y = points[i]![1];
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < low) low = y;
    if (y > high) high = y;
  }
  return { left, right, low, high };
}
