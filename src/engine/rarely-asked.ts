/**
 * What is asked only where a formula has no answer, or more than one problem has its cause. The page loads it with the late functions
 * (src/setup/late-functions.ts), and until then a problem says less; everywhere else it is there from the beginning.
 */
import { causes } from "./cause-keys.ts";
import { circularCells } from "./circular-cells.ts";
import { circularReferenceSentence } from "./circular-reference.ts";
import { culpritOf } from "./culprit.ts";
import { dividesBy, divisorOf } from "./divisor.ts";

const all = { causes, circularCells, circularReferenceSentence, culpritOf, dividesBy, divisorOf };

export const rarelyAsked: Partial<typeof all> = all;
