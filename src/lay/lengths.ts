/** Lengths in the sentences about a lay. */
import { tapeTextBeside } from "../../functions/fractions.ts";
import type { LayQuestion } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";

/** A length in words; it does not read like one of the lengths `beside` it that it differs from. */
export type SayLength = (length: number, ...beside: number[]) => string;

/** Writes lengths by the tape of the question, "8 5/8 in"; of a question without a tape as plain figures. */
export const sayLengths =
  ({ tape }: Pick<LayQuestion, "tape">): SayLength =>
  (length, ...beside) => {
    if (!Number.isFinite(length)) return plain(length);
    return tape ? `${tapeTextBeside(length, beside, tape.unit, tape.mark)} ${tape.unit}` : plain(length);
  };

/** A number as a person would write it: at most four decimals, no trailing zeros. */
export function plain(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(4))) : phrase`a number that is not finite`;
}
