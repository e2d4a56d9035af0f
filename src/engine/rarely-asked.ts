/**
 * What is asked only where a formula has no answer, more than one problem has its cause, or a figure makes no sense. The page loads it with the late functions
 * (src/setup/late-functions.ts), and until then a problem says less; everywhere else it is there from the beginning.
 */
import { amountsBelowZero } from "./amounts-below-zero.ts";
import { causes } from "./cause-keys.ts";
import { circularCells } from "./circular-cells.ts";
import { circularReferenceSentence } from "./circular-reference.ts";
import { culpritOf } from "./culprit.ts";
import { dividesBy, divisorOf } from "./divisor.ts";
import { namedFigures } from "./named-figures.ts";

const all = {
  amountsBelowZero,
  causes,
  circularCells,
  circularReferenceSentence,
  culpritOf,
  dividesBy,
  divisorOf,
  namedFigures,
};

export const rarelyAsked: Partial<typeof all> = all;
