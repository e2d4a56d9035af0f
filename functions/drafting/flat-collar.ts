/**
 * A flat collar, half of it, developed from the necklines of front and back.
 *
 * The shoulders of the two pieces are laid together at the neck, the back over the front by the overlap at
 * the shoulders' ends. The neck edge follows both necklines. The corner that they make at the shoulder is
 * spread over the neck edge on either side of it, so that the edge keeps its length and bends evenly. The
 * outer edge keeps one distance from it; the more the shoulders overlap the shorter it is, and
 * the more the collar stands up at the neck instead of lying flat.
 */

import { isBelow } from "../compared-figures.ts";
import { type Isometry, moveEdge } from "../geometry/isometry.ts";
import { normal } from "../geometry/offset.ts";
import { smoothThrough } from "../geometry/smooth-curve.ts";
import { direction, type Edge, line, type Point, QUARTER_CIRCLE, type Stroke } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { edgePart, placeAlong, reverseEdge } from "../pieces/edges.ts";
import { innerLine } from "../pieces/facing.ts";
import { edgeLength, type Piece, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";
import type { Neckline } from "./neckline.ts";

/** The direction from one end of an edge straight to the other, in radians. */
const bearing = (edge: Edge): number => {
  const [from, to] = [edge[0]!.from, edge.at(-1)!.to];
  return Math.atan2(to[1] - from[1], to[0] - from[0]);
};

/** The neckline with its beginning at (0, 0), its shoulder pointing along `turn`, and its other end to the `side` of the shoulder: 1 for +y. */
function laid({ neck, shoulder }: Neckline, turn: number, side: 1 | -1): Edge {
  const angle = bearing(shoulder);
  const off = Math.sin(bearing(neck) - angle);
  const flip = Math.sign(off) === side ? 1 : -1;
  // Turned so that the shoulder lies along +x, reflected over it where that is needed, and turned on.
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [p, q] = [Math.cos(turn), Math.sin(turn)];
  const motion: Isometry = {
    a: p * c + flip * q * s,
    c: p * s - flip * q * c,
    b: q * c - flip * p * s,
    d: q * s + flip * p * c,
    e: 0,
    f: 0,
  };
  const [x, y] = neck[0]!.from;
  const [e, f] = [-(motion.a * x + motion.c * y), -(motion.b * x + motion.d * y)];
  return moveEdge({ ...motion, e, f }, neck);
}

export interface CollarMeasures {
  readonly front: Neckline;
  readonly back: Neckline;
  /** How far the shoulders' ends lie over each other. */
  readonly overlap: number;
  readonly depth: number;
  readonly ease: number;
  readonly shape: "round" | "square";
}

/** The neck edge from centre front to centre back, as long as both necklines, and the corner it had at the shoulder in radians. */
export function collarNeck({ front, back, overlap }: CollarMeasures): { edge: Edge; corner: number } {
  const span = Math.min(edgeLength(front.shoulder), edgeLength(back.shoulder));
  if (!isBelow(overlap, span))
    throw new Refusal(
      (say) =>
        phrase`overlap must be less than the shoulder, which is ${say(span, overlap)} long, not ${say(overlap, span)}`,
    );
  const ahead = reverseEdge(laid(front, 0, 1));
  const behind = laid(back, 2 * Math.asin(overlap / (2 * span)), -1);
  const [[a, b], [c, d]] = [direction(ahead.at(-1)!, 1), direction(behind[0]!, 0)] as const;
  const corner = Math.atan2(a * d - b * c, a * c + b * d);
  const edge = Math.abs(corner) < 1e-9 ? [...ahead, ...behind] : spread(ahead, behind, corner);
  return { edge, corner };
}

/** How many points of each neckline the spread edge goes through. */
const POINTS = 12;

/**
 * Both runs as one smooth curve: each short step of theirs keeps its length and is turned by a share of the corner, which grows smoothly from
 * nothing, three quarters of the shorter run before the corner, to a half at the corner, and back on its other side.
 */
function spread(before: Edge, after: Edge, corner: number): Edge {
  const [one, two] = [edgeLength(before), edgeLength(after)];
  const reach = 0.75 * Math.min(one, two);
  const places = [
    ...Array.from({ length: POINTS }, (_, i) => placeAlong(before, (one * i) / POINTS).point),
    ...Array.from({ length: POINTS + 1 }, (_, i) => placeAlong(after, (two * i) / POINTS).point),
  ];
  const points: Point[] = [places[0]!];
  for (let i = 1; i < places.length; i += 1) {
    // The middle of the step, as a length from the corner.
    const at = i <= POINTS ? (one * (i - 0.5)) / POINTS - one : (two * (i - POINTS - 0.5)) / POINTS;
    const t = Math.min(1, Math.max(0, (at + reach) / (2 * reach)));
    const turn = corner * (t * t * (3 - 2 * t) - (at > 0 ? 1 : 0));
    const [dx, dy] = [places[i]![0] - places[i - 1]![0], places[i]![1] - places[i - 1]![1]];
    const [x, y] = points[i - 1]!;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    points.push([x + dx * cos - dy * sin, y + dx * sin + dy * cos]);
  }
  return scaled(smoothThrough(points), (one + two) / edgeLength(smoothThrough(points)));
}

/** An edge made larger about (0, 0). */
function scaled(edge: Edge, k: number): Edge {
  const grow = ([x, y]: Point): Point => [k * x, k * y];
  return edge.map((stroke): Stroke => {
    const ends = { from: grow(stroke.from), to: grow(stroke.to) };
    if (stroke.kind === "curve") return { ...stroke, ...ends, c1: grow(stroke.c1), c2: grow(stroke.c2) };
    if (stroke.kind === "arc")
      return { ...stroke, ...ends, centre: grow(stroke.centre), radius: k * stroke.radius };
    return { ...stroke, ...ends };
  });
}

/** Edges: 1 neck edge from centre back to centre front, 2 front, 3 outer edge, 4 centre back, upright at the left from (0, 0). */
export function flatCollar(measures: CollarMeasures, neck: Edge, tolerance: number): Piece {
  const { depth, ease, shape } = measures;
  const long = edgeLength(neck);
  const back = reverseEdge(scaled(neck, (long + ease) / long));
  const [dx, dy] = direction(back[0]!, 0);
  const size = Math.sqrt(dx * dx + dy * dy);
  const [c, s] = [dx / size, dy / size];
  const [x, y] = back[0]!.from;
  // Reflected, so that the collar lies below its neck edge with centre back at the left.
  const upright: Isometry = { a: c, b: s, c: s, d: -c, e: -(c * x + s * y), f: c * y - s * x };
  const run = moveEdge(upright, back);
  const outer = innerLine([run], depth, -1, tolerance);
  const [start, end] = [run[0]!.from, run.at(-1)!.to];
  const { front, rest } =
    shape === "square"
      ? { front: [line(end, outer.at(-1)!.to)], rest: outer }
      : roundFront(end, outer, depth, normal(run.at(-1)!, 1, -1));
  return pieceOf(
    [run, front, reverseEdge(rest), [line(rest[0]!.from, start)]],
    ["neck edge", "front", "outer edge", "centre back"],
  );
}

/** A front that leaves the neck edge square to it and bends into the outer edge, as far along that as the collar is deep. */
function roundFront(neck: Point, outer: Edge, depth: number, [nx, ny]: Point): { front: Edge; rest: Edge } {
  const whole = edgeLength(outer);
  const off = Math.min(depth, whole / 2);
  const rest = edgePart(outer, 0, whole - off);
  const to = rest.at(-1)!.to;
  const [dx, dy] = direction(rest.at(-1)!, 1);
  const along = (QUARTER_CIRCLE * off) / Math.sqrt(dx * dx + dy * dy);
  const front: Stroke = {
    kind: "curve",
    from: neck,
    c1: [neck[0] + nx * QUARTER_CIRCLE * depth, neck[1] + ny * QUARTER_CIRCLE * depth],
    c2: [to[0] + dx * along, to[1] + dy * along],
    to,
  };
  return { front: [front], rest };
}
