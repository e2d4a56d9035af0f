/** Which arguments of a call a refusal is about, where it does not say so itself: those that its sentence names. */
import { type Argument, isList, takesOf } from "./arguments.ts";
import type { Declaration } from "./define.ts";
import type { CellOfCall } from "./refusal.ts";

/**
 * "hem must be at least as long as top, not 36 in against 48 in" names hem and top. Names of arguments are the same in
 * every language. A sentence that does not begin with one is about something else, such as a piece that crosses itself.
 */
export function argumentsNamed(
  declaration: Declaration,
  args: readonly Argument[],
  sentence: string,
): readonly CellOfCall[] {
  const words = sentence.match(/[a-z][a-z_]*/g) ?? [];
  const names = Object.keys(takesOf(declaration, args));
  if (words[0] === undefined || !names.includes(words[0])) return [];
  // What follows a colon is how to mend it.
  const named = new Set(sentence.split(": ")[0]!.match(/[a-z][a-z_]*/g));
  return names.flatMap((name, position) =>
    named.has(name) && position < args.length && !isList(args[position]!) ? [{ position, cell: 0 }] : [],
  );
}
