/** The sentence with which a sewing function explains why its arguments have no answer. */
import { numberText } from "./number-text.ts";

/** Writes a length in a refusal as the tape shows it; `beside` are lengths that must not read the same. */
type Say = (length: number, ...beside: number[]) => string;

/**
 * Thrown inside `compute` when the arguments have no answer; the sentence says why. A sentence
 * with lengths in it is a function of `say`, so that they are written as the book's tape shows them.
 */
export class Refusal extends Error {
  readonly sentence: (say: Say) => string;

  constructor(sentence: string | ((say: Say) => string)) {
    const words = typeof sentence === "string" ? () => sentence : sentence;
    super(words((length) => numberText(length)));
    this.sentence = words;
  }
}
