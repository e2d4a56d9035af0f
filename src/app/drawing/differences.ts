/** How far an outline has grown or shrunk on each side while something is tried out. */
import { dimension, type Shape } from "../../../functions/drawing/shapes.ts";
import type { Point } from "../../../functions/geometry/strokes.ts";
import { type Piece, pieceArea, pieceBounds } from "../../../functions/pieces/piece.ts";

const largest = (shapes: readonly Shape[]): Piece | null => {
  const pieces = shapes.flatMap((shape) => (shape.kind === "outline" ? [shape.piece] : []));
  return pieces.toSorted((a, b) => pieceArea(b) - pieceArea(a))[0] ?? null;
};

/** Dimensions from the old edge to the new one, in the middle of each side that moved by `least` or more. */
export function differences(before: readonly Shape[], now: readonly Shape[], least: number): Shape[] {
  const [old, fresh] = [largest(before), largest(now)];
  if (!old || !fresh) return [];
  const [a, b] = [pieceBounds(old), pieceBounds(fresh)];
  const x = (b.left + b.right) / 2;
  const y = (b.low + b.high) / 2;
  const side = (from: Point, to: Point, out: number): Shape[] =>
    Math.abs(out) < least ? [] : [dimension(from, to, { label: out > 0 ? "+" : "−" })];
  return [
    ...side([a.left, y], [b.left, y], a.left - b.left),
    ...side([a.right, y], [b.right, y], b.right - a.right),
    ...side([x, a.low], [x, b.low], a.low - b.low),
    ...side([x, a.high], [x, b.high], b.high - a.high),
  ];
}
