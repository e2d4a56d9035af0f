/** The built-in functions that a maker needs, by name: a chosen part of what HyperFormula has. */
import { CHOOSING } from "./choosing.ts";
import { builtIns, describe } from "./described.ts";
import { FIGURES } from "./figures.ts";
import { LISTS_AND_TEXTS } from "./lists-and-texts.ts";
import { SUMS } from "./sums.ts";

describe(
  [...CHOOSING, ...SUMS, ...FIGURES, ...LISTS_AND_TEXTS].toSorted((a, b) => (a.name < b.name ? -1 : 1)),
);

export { builtIns };
