/** Pieces that may come out crossing themselves. */
import { Refusal } from "../refusal.ts";
import { type Piece, requireSimple } from "./piece.ts";

/** The piece itself; refused with this sentence when its outline crosses itself or has no area. */
export function refuseUnlessSimple(sentence: string, piece: Piece): Piece {
  try {
    return requireSimple(piece);
  } catch {
    throw new Refusal(sentence);
  }
}
