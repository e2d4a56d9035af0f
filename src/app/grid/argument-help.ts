/** What is to be told of the argument that is being typed. */
import type { Declaration } from "../../../functions/define.ts";
import { allowed, argumentText } from "../../../functions/help.ts";
import type { Unit } from "../../../functions/units.ts";

/** One way to write the arguments. */
interface Form {
  /** The arguments as the help writes them, in order. */
  readonly takes: readonly string[];
  /** Which of them is being typed; -1 past the last. */
  readonly current: number;
}

export interface ArgumentHelp {
  readonly name: string;
  /** A function that reads a list by its headings has two forms, that with the block first. */
  readonly forms: readonly Form[];
  /** What the argument is and which values it may have, in each form that has it. */
  readonly about: string;
}

export function argumentHelp(declaration: Declaration, argument: number, unit: Unit): ArgumentHelp {
  const { name, takes, block } = declaration;
  const ways = block ? [block.takes, takes] : [takes];
  const told = ways.flatMap((way) => {
    const take = Object.values(way)[argument];
    return take ? `${take.about} (${allowed(take, unit)})` : [];
  });
  const most = Object.keys(takes).length;
  return {
    name,
    forms: ways.map((way) => ({
      takes: Object.entries(way).map(([one, take]) => argumentText(one, take)),
      current: argument < Object.keys(way).length ? argument : -1,
    })),
    about:
      told.length > 0
        ? [...new Set(told)].join("; or, with the lists one by one, ")
        : `${name} has ${most} argument${most === 1 ? "" : "s"}, and this is argument ${argument + 1}`,
  };
}
