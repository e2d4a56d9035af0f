/** From places to an answer: what length each cloth is used for, how densely, and who is missing. */
import type { Lay, LayQuestion, Placement } from "../../functions/lay.ts";
import { boundsOf, signedArea, turned } from "./outline.ts";

export function answerFrom(question: LayQuestion, placements: readonly Placement[]): Lay {
  const lengths = question.cloths.map(() => 0);
  const left = question.pieces.map((piece) => piece.quantity);
  const areas = question.pieces.map((piece) => Math.abs(signedArea(piece.outline)));
  // Copies of one shape share their turned bounds.
  const rights = new Map<string, number>();
  let area = 0;
  for (const { piece, cloth, turn, x } of placements) {
    const key = `${piece} ${turn}`;
    let right = rights.get(key);
    if (right === undefined) {
      right = boundsOf(turned(question.pieces[piece]!.outline, turn)).right;
      rights.set(key, right);
    }
    lengths[cloth] = Math.max(lengths[cloth]!, x + right);
    left[piece]!--;
    area += areas[piece]!;
  }
  const cloth = lengths.reduce((sum, length, i) => sum + length * question.cloths[i]!.width, 0);
  return {
    placements,
    lengths,
    density: cloth > 0 ? area / cloth : 0,
    missing: left.flatMap((count, piece) => (count > 0 ? [[piece, count] as const] : [])),
  };
}

/**
 * Whether lay `a` is better than `b`: first less missing (by area), then less cloth (by area).
 * Differences below a millionth do not count.
 */
export function isBetter(question: LayQuestion, a: Lay, b: Lay): boolean {
  const missing = missingArea(question, a) - missingArea(question, b);
  const worth = question.pieces.reduce((sum, p) => sum + p.quantity * Math.abs(signedArea(p.outline)), 0);
  if (Math.abs(missing) > 1e-9 * worth) return missing < 0;
  return clothUsed(question, a) < clothUsed(question, b) - 1e-7 * worth;
}

function missingArea(question: LayQuestion, lay: Lay): number {
  return lay.missing.reduce(
    (sum, [piece, n]) => sum + n * Math.abs(signedArea(question.pieces[piece]!.outline)),
    0,
  );
}

/** Width × length used, over all cloths; while some is still to be bought, cloth in hand counts next to nothing. */
function clothUsed(question: LayQuestion, lay: Lay): number {
  const buying = question.cloths.some(({ length }) => length === null);
  return lay.lengths.reduce((sum, length, i) => {
    const cloth = question.cloths[i]!;
    return sum + length * cloth.width * (buying && cloth.length !== null ? 1e-3 : 1);
  }, 0);
}
