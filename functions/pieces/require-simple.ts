/** Pieces that may come out crossing themselves. */
import { Refusal } from "../refusal.ts";
import { type Piece, soundPiece } from "./piece.ts";

/** The piece itself; refused with this sentence when its outline crosses itself or has no area. */
export function soundOr(sentence: string, piece: Piece): Piece {
  try {
    return soundPiece(piece);
  } catch {
    throw new Refusal(sentence);
  }
}
