/** The fitting log: rows of piece, seam, and what its girth gained. */
import { Refusal } from "./define.ts";

const same = (a: string | null, b: string): boolean => a !== null && a.trim().toLowerCase() === b;

/** The amounts of the rows that name this piece and this seam, in the log's order. */
export function seamRows(
  pieces: readonly (string | null)[],
  seams: readonly (string | null)[],
  amounts: readonly (number | null)[],
  piece: string,
  seam: string,
): number[] {
  if (pieces.length !== seams.length || pieces.length !== amounts.length) {
    throw new Refusal(
      `pieces, seams and amounts must be equally long, not ${pieces.length}, ${seams.length} and ${amounts.length} cells`,
    );
  }
  const [wantedPiece, wantedSeam] = [piece.trim().toLowerCase(), seam.trim().toLowerCase()];
  if (wantedPiece === "") throw new Refusal("piece is empty: name the piece as the log does");
  if (wantedSeam === "") throw new Refusal("seam is empty: name the seam as the log does");
  return amounts.flatMap((amount, i) => {
    if (amount !== null && (blank(pieces[i]!) || blank(seams[i]!))) {
      throw new Refusal(
        `${blank(pieces[i]!) ? "pieces" : "seams"}, number ${i + 1}, is empty though an amount stands beside it: name what was altered`,
      );
    }
    if (!same(pieces[i]!, wantedPiece) || !same(seams[i]!, wantedSeam)) return [];
    if (amount === null) {
      throw new Refusal(
        `amounts, number ${i + 1}, is empty: tell what the ${wantedPiece}'s ${wantedSeam} was let out (+) or taken in (-)`,
      );
    }
    return [amount];
  });
}

const blank = (text: string | null): boolean => text === null || text.trim() === "";
