/** What is to be told of the argument that is being typed. */
import type { Declaration } from "../../../functions/define.ts";
import { allowed, argumentText } from "../../../functions/help.ts";
import type { Unit } from "../../../functions/units.ts";

export interface ArgumentHelp {
  readonly name: string;
  /** The arguments as the help writes them, in order. */
  readonly takes: readonly string[];
  /** Which of them is being typed; -1 past the last. */
  readonly current: number;
  /** What it is and which values it may have. */
  readonly about: string;
}

export function argumentHelp(declaration: Declaration, argument: number, unit: Unit): ArgumentHelp {
  const entries = Object.entries(declaration.takes);
  const current = argument < entries.length ? argument : -1;
  const take = entries[current]?.[1];
  return {
    name: declaration.name,
    takes: entries.map(([name, one]) => argumentText(name, one)),
    current,
    about: take
      ? `${take.about} (${allowed(take, unit)})`
      : `${declaration.name} has ${entries.length} argument${entries.length === 1 ? "" : "s"}, and this is argument ${argument + 1}`,
  };
}
