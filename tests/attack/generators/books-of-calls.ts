import { HyperFormula } from "hyperformula";
import { register } from "../../../src/engine/register.ts";
import { define } from "../generator.ts";
import { call } from "../pieces-of-formula.ts";
import { bookFault, bookWith } from "../probe.ts";

register();
const NAMES = HyperFormula.getRegisteredFunctionNames("enGB").toSorted();

export const generator = define<string[]>({
  name: "books of calls",
  about:
    "every function with odd arguments, sixteen formulas in a book: an answer or a sentence, and the rest of the book works",
  make: (random) => random.many(16, () => `=${call(random, NAMES)}`),
  attempt: (formulas) => bookFault(bookWith(formulas)),
  // Each of the sixteen may take its time to be stopped, in the cell, the bar and the working.
  longest: 8000,
});
