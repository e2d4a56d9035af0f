/** The fitting log: rows of piece, seam, and what its girth gained. */

import { comparedName } from "../compared-name.ts";
import { suggestion } from "../nearest-word.ts";
import { phrase } from "../phrase.ts";
import { Refusal } from "../refusal.ts";

export interface FittingLog {
  readonly pieces: readonly (string | null)[];
  readonly seams: readonly (string | null)[];
  readonly amounts: readonly (number | null)[];
  /** Every seam of the garment as piece and seam, "bodice side"; null when it was left out. */
  readonly garment: readonly (string | null)[] | null;
}

/**
 * The amounts of the rows that name this piece and this seam, in the log's order. Refuses a piece
 * or a seam that the log does not name, unless the log is blank or the garment's seams name it,
 * and a row that names a seam that is not in the garment.
 */
export function seamRows(log: FittingLog, piece: string, seam: string): number[] {
  const { pieces, seams, amounts } = log;
  if (pieces.length !== seams.length || pieces.length !== amounts.length) {
    throw new Refusal(
      phrase`pieces, seams and amounts must have the same number of cells, not ${pieces.length}, ${seams.length} and ${amounts.length}`,
    );
  }
  const [wantedPiece, wantedSeam] = [normalised(piece), normalised(seam)];
  if (wantedPiece === "") throw new Refusal(phrase`piece is empty: write the piece's name as the log has it`);
  if (wantedSeam === "") throw new Refusal(phrase`seam is empty: write the seam's name as the log has it`);
  amounts.forEach((amount, i) => {
    if (amount !== null && (normalised(pieces[i]!) === "" || normalised(seams[i]!) === "")) {
      throw new Refusal(
        phrase`${normalised(pieces[i]!) === "" ? "pieces" : "seams"}, number ${i + 1}, is empty although the row has an amount: write what was altered`,
      );
    }
  });
  refuseUnknown(log, wantedPiece, wantedSeam);
  return amounts.flatMap((amount, i) => {
    if (normalised(pieces[i]!) !== wantedPiece || normalised(seams[i]!) !== wantedSeam) return [];
    if (amount === null) {
      throw new Refusal(
        phrase`amounts, number ${i + 1}, is empty: write how much the ${wantedPiece}'s ${wantedSeam} was let out (+) or taken in (-)`,
      );
    }
    return [amount];
  });
}

/** Refuses a name that occurs nowhere else: it is probably misspelt, and would count as no change at all. */
function refuseUnknown({ pieces, seams, garment }: FittingLog, piece: string, seam: string): void {
  const rows = pieces
    .map((one, i) => ({ piece: normalised(one), seam: normalised(seams[i]!), number: i + 1 }))
    .filter((row) => row.piece !== "" && row.seam !== "");
  const listed = garment?.map(normalised).filter((one) => one !== "") ?? [];
  if (listed.length > 0) {
    const asked = `${piece} ${seam}`;
    if (!listed.includes(asked))
      throw new Refusal(phrase`garment has no seam called "${asked}"${suggestion(asked, listed)}`);
    const strange = rows.find((row) => !listed.includes(`${row.piece} ${row.seam}`));
    if (strange) {
      const name = `${strange.piece} ${strange.seam}`;
      throw new Refusal(
        phrase`row ${strange.number} of the log names "${name}", and garment has no seam of that name${suggestion(name, listed)}`,
      );
    }
    return;
  }
  if (rows.length === 0) return;
  if (!rows.some((row) => row.piece === piece)) {
    const pieceNames = rows.map((row) => row.piece);
    throw new Refusal(
      phrase`piece is "${piece}", and no row of the log names it${suggestion(piece, pieceNames) || seamsWanted()}`,
    );
  }
  if (!rows.some((row) => row.piece === piece && row.seam === seam)) {
    const seamNames = rows.filter((row) => row.piece === piece).map((row) => row.seam);
    throw new Refusal(
      phrase`seam is "${seam}", and no row of the log names it for the ${piece}${suggestion(seam, seamNames) || seamsWanted()}`,
    );
  }
}

const seamsWanted = (): string =>
  phrase`: correct the name, or list all seams in garment; a listed seam that was never fitted has changed by 0`;

const normalised = (text: string | null): string => comparedName(text ?? "");
