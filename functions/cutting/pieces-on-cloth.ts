/** Which pieces a lay cuts from one of its cloths, in words. */
import type { Lay, LayQuestion } from "../lay.ts";

/** "2 of front, 1 of sleeve, mirrored" for the cloth of this number. Returns "" when nothing lies on it. */
export function piecesOn({ pieces }: LayQuestion, { placements }: Lay, cloth: number): string {
  return pieces
    .flatMap(({ name }, i) => {
      const count = placements.filter((one) => one.cloth === cloth && one.piece === i).length;
      return count > 0 ? [`${count} of ${name}`] : [];
    })
    .join(", ");
}

/** "cut 2 of front from the bolt; cut 1 of back from the remnant" for all cloths of a lay; "" when nothing is laid. */
export const piecesByCloth = (question: LayQuestion, lay: Lay): string =>
  question.cloths
    .flatMap(({ name }, i) => {
      const list = piecesOn(question, lay, i);
      return list === "" ? [] : [`cut ${list} from ${name}`];
    })
    .join("; ");
