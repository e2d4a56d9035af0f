/** The built-in functions that are described so far: on the page their descriptions come after the start (src/engine/all-functions.ts). */
import type { BuiltIn } from "./built-in.ts";

const described = new Map<string, BuiltIn>();

/** By name. */
export const builtIns: ReadonlyMap<string, BuiltIn> = described;

/** Adds descriptions of functions. */
export function describe(all: readonly BuiltIn[]): void {
  for (const one of all) described.set(one.name, one);
}
