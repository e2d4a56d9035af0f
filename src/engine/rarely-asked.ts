/**
 * What is asked only where a formula has no answer. The page loads it with the late functions
 * (src/setup/late-functions.ts), and until then a problem says less; everywhere else it is there from the beginning.
 */
import { circularReferenceSentence } from "./circular-reference.ts";
import { culpritOf } from "./culprit.ts";

const all = { circularReferenceSentence, culpritOf };

export const rarelyAsked: Partial<typeof all> = all;
