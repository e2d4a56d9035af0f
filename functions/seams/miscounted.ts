/** Pieces of which the garment may have another number than the list of pieces says: with it a seam would come out. */
import type { GarmentPiece } from "./piece-list.ts";
import { commonDivisor, type MeasuredSeam, type SeamPart } from "./seam-sides.ts";

export interface Miscounted {
  readonly piece: GarmentPiece;
  /** The number with which the seam comes out, the nearest to that of the list. */
  readonly count: number;
}

/** So many pieces of one kind are tried. */
const MOST_TRIED = 12;

/** The pieces at a seam of which another number makes both sides fit, as `fits` says of their lengths. */
export function miscounted(
  { sides }: MeasuredSeam,
  fits: (first: number, second: number) => boolean,
): Miscounted[] {
  const parts = sides.flatMap((side) => side.parts);
  const pieces = [...new Set(parts.map(({ piece }) => piece))];
  if (pieces.length < 2) return [];
  return pieces.flatMap((piece): Miscounted[] => {
    const tried = Array.from({ length: MOST_TRIED }, (_, i) => i + 1)
      .filter((count) => count !== piece.count)
      .sort((a, b) => Math.abs(a - piece.count) - Math.abs(b - piece.count));
    const count = tried.find((one) => {
      const copies = (part: SeamPart) =>
        part.piece === piece ? (part.copies * one) / piece.count : part.copies;
      const seams = parts.map(copies).reduce(commonDivisor);
      const [first, second] = sides.map((side) =>
        side.parts.reduce((sum, part) => {
          const named = side.parts.filter((other) => other.text === part.text).length;
          const times = copies(part) / seams / named;
          return Number.isInteger(times) ? sum + times * part.length : Number.NaN;
        }, 0),
      ) as [number, number];
      return fits(first, second);
    });
    return count === undefined ? [] : [{ piece, count }];
  });
}
