/**
 * The boxes of all copies in rows across a strip without an end, the longest first: no good lay, but
 * one that is there in no time, whatever the number of pieces.
 */
import type { Lay, LayQuestion, Placement } from "../../functions/lay.ts";
import { answerFrom } from "./answer.ts";
import type { Shape } from "./shape.ts";

/** A lay of a question with one cloth that has no end, no flaws and no pins. */
export function inRows(question: LayQuestion, shapes: readonly (readonly Shape[])[]): Lay {
  const [cloth] = question.cloths;
  const { gap, repeat } = question;
  const slack = 1e-9 * cloth!.width;
  // Each piece in the turn in which it is shortest along the cloth, of those in which it fits across.
  const lying = shapes.map((turns) =>
    turns
      .filter(({ bounds }) => bounds.high - bounds.low <= cloth!.width * (1 + 1e-9))
      .reduce((a, b) => (lengthOf(b) < lengthOf(a) ? b : a)),
  );
  const order = question.pieces
    .flatMap(({ quantity }, piece) => Array.from({ length: quantity }, (_, copy) => ({ piece, copy })))
    .sort((a, b) => lengthOf(lying[b.piece]!) - lengthOf(lying[a.piece]!));
  const placements: Placement[] = [];
  let phase: number | null = null;
  let [row, end, y] = [0, 0, 0];
  for (const { piece, copy } of order) {
    const { turn, bounds, match } = lying[piece]!;
    const wide = bounds.high - bounds.low;
    if (y > 0 && y + wide > cloth!.width + slack) [row, y] = [end + gap, 0];
    let x = row - bounds.left;
    if (match !== null) {
      phase ??= x + match;
      x = phase - match + Math.ceil((x - phase + match) / repeat - 1e-9) * repeat;
    }
    placements.push({ piece, copy, cloth: 0, turn, x, y: y - bounds.low });
    end = Math.max(end, x + bounds.right);
    y += wide + gap;
  }
  return answerFrom(question, placements);
}

const lengthOf = ({ bounds }: Shape): number => bounds.right - bounds.left;
