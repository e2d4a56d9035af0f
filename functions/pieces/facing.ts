/** Facings: the strip of a piece along some of its edges. */

import { BendTooTight, offsetStroke } from "../geometry/offset.ts";
import type { Edge } from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { orientation } from "./allowance.ts";
import { convexity, cornerBetween, joinEnds } from "./corner.ts";
import { edgePart, reverseEdge } from "./edges.ts";
import { edgeLength, type Piece, pieceOf, requireSimple } from "./piece.ts";

/**
 * The strip `depth` deep inside a piece along its edges `first` to `last` (counted from 1, in
 * drawing order, round through the end of the outline if need be). Its edges: those of the piece,
 * a part of the next edge, the "inner line" drawn back, a part of the edge before. Parts of edges
 * keep the edge's name.
 */
export function facingAlong(
  piece: Piece,
  first: number,
  last: number,
  depth: number,
  tolerance: number,
): Piece {
  const count = piece.edges.length;
  const numbers = Array.from(
    { length: ((last - first + count) % count) + 1 },
    (_, i) => (first - 1 + i) % count,
  );
  const run = numbers.map((i) => piece.edges[i]!);
  if (run.length >= count)
    throw new Refusal(phrase`edges must leave at least one edge of the piece without facing`);
  const [beforeIndex, afterIndex] = [(first - 2 + count) % count, last % count];
  const before = piece.edges[beforeIndex]!;
  const after = piece.edges[afterIndex]!;
  const inner = innerLine(run, depth, orientation(piece) === 1 ? -1 : 1, tolerance);
  // Where the inner line comes out on the neighbours.
  const end = joinEnds(inner, reverseEdge(after), depth);
  const start = end && joinEnds(reverseEdge(end.a), before, depth);
  const tooDeep = () =>
    new Refusal(
      (say) =>
        phrase`depth must be less for the edges beside the facing to reach its inner line, not ${say(depth)}`,
    );
  if (!end || !start) throw tooDeep();
  const [low, high] = [edgeLength(after) - edgeLength(end.b), edgeLength(start.b)];
  if (!(low > 0) || !(high < edgeLength(before))) throw tooDeep();
  if (before === after && low > high) throw tooDeep();
  const nameOf = (i: number): string => piece.names[i]!;
  const facing = pieceOf(
    [...run, edgePart(after, 0, low), start.a, edgePart(before, high, edgeLength(before))],
    [...numbers.map(nameOf), nameOf(afterIndex), "inner line", nameOf(beforeIndex)],
  );
  try {
    return requireSimple(facing);
  } catch {
    throw tooDeep();
  }
}

/** All edges of the run moved inwards, as one. */
export function innerLine(run: readonly Edge[], depth: number, side: 1 | -1, tolerance: number): Edge {
  let inner: Edge = [];
  for (const stroke of run.flat()) {
    let next: Edge;
    try {
      next = offsetStroke(stroke, depth, side, tolerance);
    } catch (reason) {
      if (!(reason instanceof BendTooTight)) throw reason;
      throw new Refusal(
        (say) =>
          phrase`depth must be less than ${say(reason.radius, depth)}, the radius of the tightest bend it follows, not ${say(depth, reason.radius)}`,
      );
    }
    const turned =
      inner.length === 0
        ? { first: [], second: next }
        : cornerBetween(inner, next, stroke.from, depth, convexity(inner, next, side));
    if (!turned)
      throw new Refusal(
        (say) => phrase`depth must be less for the corner the facing goes round, not ${say(depth)}`,
      );
    inner = [...turned.first, ...turned.second];
  }
  return inner;
}
