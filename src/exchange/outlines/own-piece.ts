/** A piece whose text stands in a file that Ellwand wrote, beside the outline that was drawn for it. */
import { distance, type Edge, pointAt, type Stroke } from "../../../functions/geometry/strokes.ts";
import { type Piece, pieceBounds, pieceOf, readPiece } from "../../../functions/pieces/piece.ts";
import { placedStrokes } from "./drawn-lines.ts";

/** How far, as a share of its size, the drawn outline may stray from the text: figures are written with nine places. */
const AGREES = 1e-6;

/**
 * The piece of the text, as large as it is drawn and where it is drawn; null when the drawing was changed
 * since, or when the text is not a piece: then the drawing counts.
 */
export function ownPiece(text: string, drawn: Edge): Piece | null {
  let piece: Piece;
  try {
    piece = readPiece(text);
  } catch {
    return null;
  }
  const box = pieceBounds(piece);
  const target = pieceBounds({ edges: [drawn] });
  const size = Math.max(target.right - target.left, target.high - target.low);
  const factor = size / Math.max(box.right - box.left, box.high - box.low);
  const place = (edge: Edge): Edge =>
    placedStrokes(edge, target.left / factor - box.left, target.low / factor - box.low, factor);
  const edges = piece.edges.map(place);
  // A stroke as short as a rounding error may be drawn or not.
  const isDrawn = (stroke: Stroke) =>
    stroke.kind !== "line" || distance(stroke.from, stroke.to) > AGREES * size;
  const [strokes, lines] = [edges.flat().filter(isDrawn), drawn.filter(isDrawn)];
  const same =
    strokes.length === lines.length &&
    strokes.every((stroke, i) => {
      const one = lines[i]!;
      const agrees = (share: number) =>
        distance(pointAt(stroke, share), pointAt(one, share)) <= AGREES * size;
      // A curve may be as straight as the line it was drawn for.
      return [0, 0.3, 0.6, 1].every(agrees);
    });
  if (!same) return null;
  return pieceOf(
    edges,
    piece.names,
    piece.marks.map(({ line, role }) => ({ line: place(line), role })),
  );
}
