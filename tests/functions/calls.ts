/** Calls of one function as a test reads them: the answer, the sentence of a refusal, the steps, the piece. */
import type { Declaration } from "../../functions/define.ts";
import { type Piece, readPiece } from "../../functions/pieces/piece.ts";
import { type Argument, explain, isRefused, run } from "../../functions/run.ts";
import type { Unit } from "../../functions/units.ts";

export function calls(declaration: Declaration, unit: Unit) {
  const answer = (...args: Argument[]): number | string => {
    const found = run(declaration, args, { unit });
    if (isRefused(found)) throw new Error(`refused: ${found.refusal}`);
    return found;
  };
  return {
    answer,
    figure: (...args: Argument[]): number => answer(...args) as number,
    refusal(...args: Argument[]): string {
      const found = run(declaration, args, { unit });
      return isRefused(found) ? found.refusal : `not refused: ${found}`;
    },
    step: (name: string, ...args: Argument[]): number =>
      explain(declaration, args, { unit }).steps.find((step) => step.name === name)?.value as number,
    piece: (...args: Argument[]): Piece => readPiece(String(answer(...args))),
  };
}
