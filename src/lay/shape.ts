/**
 * A piece in one of its turns, made ready for laying: flat arrays, the outline turned, and a
 * fuller outline that carries half the gap all round, so that two of them may touch.
 */
import { EndType, FillRule, inflatePaths, intersect, JoinType } from "clipper2-ts";
import type { Point } from "../../functions/geometry/strokes.ts";
import type { LayPiece, LayQuestion } from "../../functions/lay.ts";
import {
  type Bounds,
  boundingBox,
  cosSin,
  signedArea,
  turned,
  wholeTurn,
  withoutRepeats,
} from "./outline.ts";

export interface Shape {
  readonly turn: number;
  /** The cut line turned about (0, 0), counter-clockwise. */
  readonly points: readonly Point[];
  readonly bounds: Bounds;
  /** `points` grown by half the gap, and no farther across and along the cloth; the same points when the gap is 0. */
  readonly full: readonly Point[];
  readonly fullBounds: Bounds;
  /** The same, a little longer along the cloth: slabs are cut from it, and exact slides of `full` follow them. */
  readonly inSlabs: readonly Point[];
  /** x of the turned match point, where the piece has one and the cloth a repeat. */
  readonly match: number | null;
  /** Square units of the cut line. */
  readonly area: number;
  /** y of its middle of gravity. */
  readonly heart: number;
}

/** The shapes of every piece, one per turn that its grain allows, in the order of the question. */
export function shapesOf(question: LayQuestion): Shape[][] {
  return question.pieces.map((piece) => {
    const shapes = plainShapes(piece, question.gap);
    if (!(question.repeat > 0 && piece.match)) return [...shapes];
    const [x, y] = piece.match;
    return shapes.map((shape) => {
      const [c, s] = cosSin(shape.turn);
      return { ...shape, match: c * x - s * y };
    });
  });
}

/**
 * The shapes of a piece on plain cloth. The same pieces are laid again and again, on one width of
 * cloth and on another, and while only one of them changes: those made last are kept.
 */
function plainShapes(piece: LayPiece, gap: number): readonly Shape[] {
  const turns = distinctTurns(piece);
  const known = kept.find((one) => one.gap === gap && isSame(one.outline, piece.outline, one.turns, turns));
  if (known) return known.shapes;
  const outline = counterClockwise(withoutRepeats(piece.outline));
  const full = gap > 0 ? grown(outline, gap / 2) : outline;
  const shapes = turns.map((turn): Shape => {
    const points = turned(outline, turn);
    const bounds = boundingBox(points);
    const grownPoints = full === outline ? points : turned(full, turn);
    const [fullPoints, inSlabs] =
      full === outline
        ? [points, points]
        : [within(grownPoints, bounds, gap / 2, gap / 2), within(grownPoints, bounds, gap, gap / 2)];
    return {
      turn,
      points,
      bounds,
      full: fullPoints,
      fullBounds: boundingBox(fullPoints),
      inSlabs,
      match: null,
      area: signedArea(points),
      heart: heartOf(points),
    };
  });
  if (kept.length >= MOST_KEPT) kept.pop();
  kept.unshift({ gap, turns, outline: piece.outline, shapes });
  return shapes;
}

interface Kept {
  readonly gap: number;
  readonly turns: readonly number[];
  readonly outline: readonly Point[];
  readonly shapes: readonly Shape[];
}

/** The newest first. */
const kept: Kept[] = [];
const MOST_KEPT = 100;

/** Whether two outlines and two lists of turns are the same to the last figure. */
function isSame(
  a: readonly Point[],
  b: readonly Point[],
  turns: readonly number[],
  others: readonly number[],
): boolean {
  if (a.length !== b.length || turns.length !== others.length) return false;
  return a.every((p, i) => p[0] === b[i]![0] && p[1] === b[i]![1]) && turns.every((t, i) => t === others[i]);
}

/** The turns of a piece between 0 and 360, each once. */
export function distinctTurns(piece: LayPiece): number[] {
  return [...new Set(piece.turns.map(wholeTurn))];
}

export function counterClockwise(outline: readonly Point[]): readonly Point[] {
  return signedArea(outline) < 0 ? [...outline].reverse() : outline;
}

/** The outline grown all round by `by`, corners rounded; never less than `by` anywhere. */
export function grown(outline: readonly Point[], by: number): readonly Point[] {
  const { left, right, low, high } = boundingBox(outline);
  // 2^26 steps across the outline: far finer than cloth, far inside what doubles hold, and the same in inches and centimetres.
  const scale = 2 ** 26 / Math.max(right - left, high - low, by);
  const path = outline.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) }));
  // Round corners are drawn with chords inside the arc: allow for the sagitta.
  const sagitta = by * 0.01;
  const rings = inflatePaths(
    [path],
    Math.round((by + sagitta) * scale) + 1,
    JoinType.Round,
    EndType.Polygon,
    2,
    sagitta * scale,
  );
  return largest(rings, scale);
}

/**
 * A grown outline that reaches no farther past these bounds than `along` and `across` the cloth: pieces and gaps
 * that add up to the width of the cloth fit it, though round corners are drawn a little outside the arc.
 */
function within(grown: readonly Point[], bounds: Bounds, along: number, across: number): readonly Point[] {
  const [left, right] = [bounds.left - along, bounds.right + along];
  const [low, high] = [bounds.low - across, bounds.high + across];
  const scale = 2 ** 26 / Math.max(right - left, high - low);
  const path = grown.map(([x, y]) => ({ x: Math.round(x * scale), y: Math.round(y * scale) }));
  const [west, east] = [Math.floor(left * scale), Math.ceil(right * scale)];
  const [south, north] = [Math.floor(low * scale), Math.ceil(high * scale)];
  const box = [
    { x: west, y: south },
    { x: east, y: south },
    { x: east, y: north },
    { x: west, y: north },
  ];
  const kept = intersect([path], [box], FillRule.NonZero);
  return largest(kept, scale).map(
    ([x, y]): Point => [Math.min(Math.max(x, left), right), Math.min(Math.max(y, low), high)],
  );
}

/** The largest of some rings, in the units that `scale` steps make up. */
function largest(rings: readonly { x: number; y: number }[][], scale: number): readonly Point[] {
  let outer: Point[] = [];
  for (const ring of rings) {
    const points = ring.map(({ x, y }): Point => [x / scale, y / scale]);
    if (signedArea(points) > Math.abs(signedArea(outer))) outer = points;
  }
  return outer;
}

/** y of the middle of gravity of a counter-clockwise outline. */
function heartOf(points: readonly Point[]): number {
  const [x0, y0] = points[0]!;
  let sum = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [ax, ay] = [points[j]![0] - x0, points[j]![1] - y0];
    const [bx, by] = [points[i]![0] - x0, points[i]![1] - y0];
    sum += (ax * by - bx * ay) * (ay + by);
  }
  return y0 + sum / (6 * signedArea(points));
}
