/** Isometries, the maps of the plane that keep every length: rotations, translations and reflections. */
import { distance, type Edge, type Point, type Stroke } from "./strokes.ts";

/** The point (x, y) goes to (a·x + c·y + e, b·x + d·y + f); a·d − b·c is 1, or −1 for a reflection. */
export interface Isometry {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const IDENTITY: Isometry = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** First `inner`, then `outer`. */
export function compose(outer: Isometry, inner: Isometry): Isometry {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  };
}

/** The reflection over the line through two points, as paper is folded along it. */
export function reflectionOver(from: Point, to: Point): Isometry {
  const length = distance(from, to);
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const [a, b, d] = [ux * ux - uy * uy, 2 * ux * uy, uy * uy - ux * ux];
  return { a, b, c: b, d, e: from[0] - a * from[0] - b * from[1], f: from[1] - b * from[0] - d * from[1] };
}

export const movePoint = ({ a, b, c, d, e, f }: Isometry, [x, y]: Point): Point => [
  a * x + c * y + e,
  b * x + d * y + f,
];

function moveStroke(motion: Isometry, stroke: Stroke): Stroke {
  const ends = { from: movePoint(motion, stroke.from), to: movePoint(motion, stroke.to) };
  if (stroke.kind === "line") return { kind: "line", ...ends };
  if (stroke.kind === "curve") {
    return { kind: "curve", ...ends, c1: movePoint(motion, stroke.c1), c2: movePoint(motion, stroke.c2) };
  }
  const way = Math.sign(motion.a * motion.d - motion.b * motion.c);
  return { ...stroke, ...ends, centre: movePoint(motion, stroke.centre), sweep: way * stroke.sweep };
}

export const moveEdge = (motion: Isometry, edge: Edge): Edge =>
  edge.map((stroke) => moveStroke(motion, stroke));
