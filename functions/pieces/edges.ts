/** Edges of a piece picked by number or name, and places along them. */

import {
  type Edge,
  type Point,
  pointAt,
  type Stroke,
  speedAt,
  strokeLength,
  strokePart,
} from "../geometry/strokes.ts";
import { rememberWithObject } from "../memo.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";
import { edgeNumberOf } from "./edge-names.ts";
import { edgeLength, type Piece } from "./piece.ts";

/** Edges written as a text, by number or by name: "3", "2, 4", "1-3" or "hem, centre back". An empty text names no edge. */
export function edgeNumbers(text: string, piece: Piece, name: string): ReadonlySet<number> {
  const count = piece.edges.length;
  const numbers = new Set<number>();
  const parts = text.split(/[,;]/).map((part) => part.trim());
  const words = parts.flatMap((part) => (/^[\d\s–-]*$/.test(part) ? part.split(/\s+/) : [part]));
  for (const word of words.filter((one) => one !== "")) {
    const found = /^(\d{1,4})(?:[-–](\d{1,4}))?$/.exec(word);
    if (!found) {
      numbers.add(edgeNumberOf(piece, word, name));
      continue;
    }
    const first = Number(found[1]);
    const last = Number(found[2] ?? first);
    for (const number of [first, last]) {
      if (number < 1 || number > count)
        throw new Refusal(
          phrase`${name} must name edges from 1 to ${count}, because the piece has ${count} edges, not ${number}`,
        );
    }
    for (let number = Math.min(first, last); number <= Math.max(first, last); number += 1)
      numbers.add(number);
  }
  return numbers;
}

/** The same edge drawn from its other end. */
export const reverseEdge = (edge: Edge): Edge => edge.map(reverseStroke).reverse();

function reverseStroke(stroke: Stroke): Stroke {
  const ends = { from: stroke.to, to: stroke.from };
  if (stroke.kind === "line") return { kind: "line", ...ends };
  if (stroke.kind === "arc") return { ...stroke, ...ends, sweep: -stroke.sweep };
  return { kind: "curve", ...ends, c1: stroke.c2, c2: stroke.c1 };
}

/** The middle of an edge by its length, where its number is written. */
export const edgeMiddle = (edge: Edge): Point => placeAlong(edge, edgeLength(edge) / 2).point;

/** Kept because a function asks for many places along one edge, and measuring a curve is the slow part of each. */
const measured = rememberWithObject<Edge, readonly number[]>();

/** A place on an edge `distance` from its beginning: which stroke, at which share of it, and where that is. */
export function placeAlong(edge: Edge, distance: number): { index: number; share: number; point: Point } {
  const lengths = measured(edge, () => edge.map(strokeLength));
  let left = distance;
  for (let index = 0; index < edge.length; index += 1) {
    const stroke = edge[index]!;
    const length = lengths[index]!;
    if (left <= length || index === edge.length - 1) {
      const share = shareAt(stroke, Math.min(Math.max(left, 0), length), length);
      return { index, share, point: pointAt(stroke, share) };
    }
    left -= length;
  }
  throw new Error("an edge has at least one stroke");
}

/**
 * The share of a stroke's parameter at which the stroke is `wanted` long. Lines and arcs need one
 * division. Curves need Newton's method, with the speed as the slope of the length, and bisection
 * where a Newton step would leave the interval that holds the answer.
 */
function shareAt(stroke: Stroke, wanted: number, length: number): number {
  if (length === 0) return 0;
  if (stroke.kind !== "curve") return wanted / length;
  let [low, high] = [0, 1];
  let share = wanted / length;
  for (let i = 0; i < 60 && high - low > 1e-14; i += 1) {
    const off = strokeLength(strokePart(stroke, 0, share)) - wanted;
    if (Math.abs(off) <= 1e-12 * length) break;
    if (off < 0) low = share;
    else high = share;
    const next = share - off / speedAt(stroke, share);
    share = next > low && next < high ? next : (low + high) / 2;
  }
  return share;
}

/** The part of an edge between two distances from its beginning. */
export function edgePart(edge: Edge, from: number, to: number): Edge {
  const start = placeAlong(edge, from);
  const end = placeAlong(edge, to);
  return edge
    .slice(start.index, end.index + 1)
    .map((stroke, i, all) =>
      strokePart(stroke, i === 0 ? start.share : 0, i === all.length - 1 ? end.share : 1),
    );
}
