/** The built-in functions that are described so far: on the page their descriptions come after the start (src/engine/all-functions.ts). */
import { translated } from "../../../functions/phrase.ts";
import type { BuiltIn } from "./built-in.ts";

const described = new Map<string, BuiltIn>();

/** A description in the reader's language. */
const inLanguage = (one: BuiltIn): BuiltIn => ({
  ...one,
  summary: translated(one.summary),
  words: translated(one.words),
  takes: Object.fromEntries(Object.entries(one.takes).map(([name, about]) => [name, translated(about)])),
  examples: one.examples.map((example) => ({ ...example, because: translated(example.because) })),
  ...(one.cautions && { cautions: translated(one.cautions) }),
});

/** By name. */
export const builtIns: ReadonlyMap<string, BuiltIn> = described;

/** Adds descriptions of functions. */
export function describe(all: readonly BuiltIn[]): void {
  for (const one of all) described.set(one.name, inLanguage(one));
}
