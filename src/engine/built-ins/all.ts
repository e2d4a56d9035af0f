/** The built-in functions that a maker needs, by name: a chosen part of what HyperFormula has. */
import type { BuiltIn } from "./built-in.ts";
import { CHOOSING } from "./choosing.ts";
import { FIGURES } from "./figures.ts";
import { LISTS_AND_TEXTS } from "./lists-and-texts.ts";
import { SUMS } from "./sums.ts";

export const builtIns: ReadonlyMap<string, BuiltIn> = new Map(
  [...CHOOSING, ...SUMS, ...FIGURES, ...LISTS_AND_TEXTS]
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
    .map((one) => [one.name, one]),
);
