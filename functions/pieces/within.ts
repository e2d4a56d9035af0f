/** Whether points lie within a piece. */
import { isInPolygon } from "../geometry/point-in-polygon.ts";
import type { Point } from "../geometry/strokes.ts";
import { flattenPiece, type Piece, pieceBounds } from "./piece.ts";

/** True when every point lies within the outline or on it, up to a thousandth of the piece's longer side. */
export function liesWithin(piece: Piece, points: readonly Point[]): boolean {
  const box = pieceBounds(piece);
  const near = Math.max(box.right - box.left, box.high - box.low) / 1000;
  const ring = flattenPiece(piece, near / 10);
  return points.every((point) => isInPolygon(point, ring) || isBeside(point, ring, near));
}

/** Whether a point is as near as this to a side of the ring. */
function isBeside([x, y]: Point, ring: readonly Point[], near: number): boolean {
  return ring.some(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    const [dx, dy] = [bx - ax, by - ay];
    const length = dx * dx + dy * dy;
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length));
    return Math.hypot(x - ax - share * dx, y - ay - share * dy) <= near;
  });
}
