/** How large a drawing is: from its file, or from one length that the maker knows. */

import { boundingBox } from "../../../functions/geometry/strokes.ts";
import {
  edgeLength,
  movePiece,
  type Piece,
  pieceBounds,
  pieceOf,
  readPiece,
  turnPiece,
  writePiece,
} from "../../../functions/pieces/piece.ts";
import { convert, type Unit } from "../../../functions/units.ts";
import { placedStrokes } from "./drawn-lines.ts";
import type { Found } from "./find-pieces.ts";

/** What a known length is the length of. */
export type Known =
  | { readonly of: "edge"; readonly piece: number; readonly edge: number }
  | { readonly of: "width" | "height" }
  | { readonly of: "unit" };

/** The length in the drawing's units of what is known: an edge, the whole drawing across or down, or one unit. */
export function drawnLength({ pieces }: Found, known: Known): number {
  if (known.of === "unit") return 1;
  if (known.of === "edge") return edgeLength(pieces[known.piece]!.piece.edges[known.edge]!);
  const box = boundingBox(
    pieces.flatMap(({ piece, at: [x, y] }) => {
      const { left, right, low, high } = pieceBounds(piece);
      return [
        [left + x, low + y],
        [right + x, high + y],
      ] as const;
    }),
  );
  return known.of === "width" ? box.right - box.left : box.high - box.low;
}

/** What one unit of the drawing is worth in a book's unit, from the file's own size; null when the file does not say. */
export const factorOfFile = ({ millimetres }: Found, unit: Unit): number | null =>
  millimetres === null ? null : convert(millimetres, "mm", unit);

/**
 * The piece in a book's unit, turned clockwise by `turn` degrees, the upper left corner of its box at (0, 0). Its
 * coordinates are written with PLACES decimal places.
 */
export function sized({ edges, names, marks }: Piece, factor: number, turn = 0): Piece {
  const large = pieceOf(
    edges.map((edge) => placedStrokes(edge, 0, 0, factor)),
    names,
    marks.map(({ line, role }) => ({ line: placedStrokes(line, 0, 0, factor), role })),
  );
  if (turn % 360 === 0) return clean(large);
  const turned = turnPiece(large, turn);
  const { left, low } = pieceBounds(turned);
  return clean(movePiece(turned, -left, -low));
}

/** No point moves by more than half a millionth of the unit across and down: in inches, by 0.000013 mm. */
const PLACES = 6;

/** The piece without the dust of calculated coordinates: 12.000000000000002 is 12, and 3.8e-16 is 0. */
function clean(piece: Piece): Piece {
  const [path = "", ...parts] = writePiece(piece).split("|");
  const figures = path.replace(/-?\d[\d.]*(?:e[-+]?\d+)?/gi, (text) =>
    String(Number(Number(text).toFixed(PLACES)) + 0),
  );
  try {
    return readPiece([figures, ...parts].join("|"));
  } catch {
    // A piece as small as the dust itself.
    return piece;
  }
}
