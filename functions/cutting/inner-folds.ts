/** Finds the inner folds of the pleats marked on a piece, where a join does not show. */
import { distance, type Edge, type Point } from "../geometry/strokes.ts";
import type { Piece } from "../pieces/piece.ts";

/**
 * The inner folds of a piece's pleats, as straight lines. A piece whose text names no roles, such as
 * one typed by hand, is searched for pleats: three marks in a row of which the first, folded over the
 * second, comes to lie on the third.
 */
export function innerFolds({ marks }: Piece): [Point, Point][] {
  const named = marks.filter(({ role }) => role === "inner");
  if (named.length > 0)
    return named.flatMap(({ line }) => {
      const ends = straightEnds(line);
      return ends ? [ends] : [];
    });
  const lines = marks.map(({ line, role }) => (role === "placement" ? straightEnds(line) : null));
  return lines.flatMap((inner, i): [Point, Point][] => {
    const [fold, placement] = [lines[i - 1], lines[i + 1]];
    if (!inner || !fold || !placement) return [];
    const slack = 1e-6 * distance(...inner);
    const over = fold.map((point) => mirrored(point, inner)) as [Point, Point];
    const apart = Math.max(...fold.map((point, k) => distance(point, inner[k]!)));
    const meets = over.every((point, k) => distance(point, placement[k]!) <= slack);
    return meets && apart > slack ? [inner] : [];
  });
}

function straightEnds(line: Edge): [Point, Point] | null {
  const [stroke, ...more] = line;
  return stroke?.kind === "line" && more.length === 0 ? [stroke.from, stroke.to] : null;
}

function mirrored([x, y]: Point, [a, b]: readonly [Point, Point]): Point {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
  const off = (2 * ((x - a[0]) * uy - (y - a[1]) * ux)) / (ux * ux + uy * uy);
  return [x - off * uy, y + off * ux];
}
