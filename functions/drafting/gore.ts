/**
 * A gore symmetrical about x = 0, its top straight at y = 0: sides straight, or shaped over the hip
 * by a smooth curve that runs on straight to the hem; hem straight across or curved to hang level.
 */

import { isBelow } from "../compared-figures.ts";
import {
  arc,
  distance,
  type Edge,
  line,
  type Point,
  type Stroke,
  strokeLength,
} from "../geometry/strokes.ts";
import { phrase } from "../phrase.ts";
import { reverseEdge } from "../pieces/edges.ts";
import { edgeLength, mirrorEdge, type Piece, pieceOf } from "../pieces/piece.ts";
import { Refusal } from "../refusal.ts";

export interface Gore {
  readonly top: number;
  /** Length of the hem along its edge. */
  readonly hem: number;
  readonly length: number;
  readonly hip: { readonly width: number; readonly drop: number } | null;
  readonly truing: "curved" | "straight";
}

/** Edges: 1 waist from left to right, 2 right side, 3 hem, 4 left side. */
export function gorePiece(gore: Gore): Piece {
  const { top, length, truing } = gore;
  const { corners, height } = truing === "straight" ? { corners: gore.hem, height: length } : curvedHem(gore);
  const right = rightSide({ ...gore, hem: corners }, height);
  const left = mirrorEdge(right);
  const [from, to]: [Point, Point] = [
    [corners / 2, height],
    [-corners / 2, height],
  ];
  const waist = line([-top / 2, 0], [top / 2, 0]);
  return pieceOf(
    [[waist], right, [hemThrough(from, to, length)], reverseEdge(left)],
    ["waist", "right side", "hem", "left side"],
  );
}

/**
 * The width from corner to corner, and their height, at which the curved hem is as long as wanted:
 * the curve is a little longer than that width, and grows with it.
 */
function curvedHem(gore: Gore): { corners: number; height: number } {
  const { hem, length } = gore;
  const at = (corners: number) => {
    const height = trueHeight({ ...gore, hem: corners });
    const along = strokeLength(hemThrough([corners / 2, height], [-corners / 2, height], length));
    return { corners, height, off: along - hem };
  };
  // The secant method from the two sides: too wide by nothing, and narrower by what the curve gains.
  let before = at(hem);
  let now = at(hem - before.off);
  for (let i = 0; i < 20 && Math.abs(now.off) > 1e-13 * hem && now.off !== before.off; i += 1) {
    const next = now.corners - (now.off * (now.corners - before.corners)) / (now.off - before.off);
    [before, now] = [now, at(next)];
  }
  return now;
}

/** The right side down to a corner at this height. */
function rightSide({ top, hem, hip }: Gore, height: number): Edge {
  const [start, end]: [Point, Point] = [
    [top / 2, 0],
    [hem / 2, height],
  ];
  if (!hip) return [line(start, end)];
  const over: Point = [hip.width / 2, hip.drop];
  const below = distance(over, end);
  const curve = hipCurve(start, over, [(end[0] - over[0]) / below, (end[1] - over[1]) / below]);
  return [curve, line(over, end)];
}

/** A side from the waist over the hip, where it has the direction (of length 1) in which it goes on. */
export function hipCurve(start: Point, over: Point, [dx, dy]: Point): Stroke {
  const reach = distance(start, over) / 3;
  return {
    kind: "curve",
    from: start,
    c1: [start[0] + (over[0] - start[0]) / 3, start[1] + (over[1] - start[1]) / 3],
    c2: [over[0] - dx * reach, over[1] - dy * reach],
    to: over,
  };
}

/** The height of the hem's corners at which the side is just as long as the middle. */
function trueHeight(gore: Gore): number {
  const { length, hip, top, hem } = gore;
  const least = hip ? hip.drop : 0;
  const side = (height: number) => edgeLength(rightSide(gore, height));
  const start = least + (length - least) * 1e-3;
  if (!isBelow(side(start), length)) {
    throw new Refusal(
      (say) =>
        phrase`length must be more for sides that go out from ${say(top, hem, length)} to ${say(hem, top, length)}, not ${say(length, top, hem)}: make the hem smaller or use more gores`,
    );
  }
  let [low, high] = [start, length];
  // False position with halving: the side grows a little faster than its height.
  let [below, above] = [side(low) - length, side(high) - length];
  for (let i = 0; i < 60 && high - low > 1e-13 * length && above > 0; i += 1) {
    const guess = i % 3 === 2 ? (low + high) / 2 : low - (below * (high - low)) / (above - below);
    const off = side(guess) - length;
    if (Math.abs(off) <= 1e-13 * length) return guess;
    if (off < 0) [low, below] = [guess, off];
    else [high, above] = [guess, off];
  }
  return high;
}

/** An arc from corner to corner that passes `length` below the top in the middle. */
function hemThrough(from: Point, to: Point, length: number): Stroke {
  const deep = length - from[1];
  const half = from[0];
  if (deep <= 1e-9 * half) return line(from, to);
  const radius = (half * half + deep * deep) / (2 * deep);
  const turn = 2 * Math.atan2(deep, half);
  return { ...arc([0, length - radius], radius, Math.PI / 2 - turn, Math.PI / 2 + turn), from, to };
}
