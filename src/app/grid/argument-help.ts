/** What the hint says of the argument that is being typed. */

import { catalogue } from "../../../functions/catalogue.ts";
import type { Takes } from "../../../functions/define.ts";
import { allowed, argumentText } from "../../../functions/help.ts";
import { phrase, plural, translated } from "../../../functions/phrase.ts";
import type { Unit } from "../../../functions/units.ts";
import { builtIns } from "../../engine/built-ins/described.ts";

/** One argument. */
interface Taken {
  /** Its bare name. */
  readonly name: string;
  /** As the help writes it: `[edge_share = 0.5]`. */
  readonly text: string;
  /** What it is. */
  readonly about: string;
  /** Which values it may have and which are usual; "" where any value may stand. */
  readonly values: string;
}

/** One way to write the arguments. */
interface Form {
  readonly takes: readonly Taken[];
  /** Which of them is being typed; -1 past the last. */
  readonly current: number;
}

export interface ArgumentHelp {
  readonly name: string;
  /** A function that reads a list by its headings has two forms, that with the block first. */
  readonly forms: readonly Form[];
  /** The arguments that may be meant, in the order of the forms: more than one where the forms differ. */
  readonly meant: readonly Taken[];
  /** Said when no form has as many arguments. */
  readonly tooMany: string | null;
}

/** The hint for an argument of a sewing function or of a built-in function, counted from 0; null for other functions. */
export function argumentHelp(name: string, argument: number, unit: Unit): ArgumentHelp | null {
  const forms = formsOf(name, unit).map((takes) => ({ takes, current: currentOf(takes, argument) }));
  if (forms.length === 0) return null;
  const meant = forms.flatMap(({ takes, current }) => takes[current] ?? []);
  const most = Math.max(...forms.map(({ takes }) => takes.length));
  return {
    name,
    forms,
    meant: meant.filter(
      (one, i) => meant.findIndex((other) => other.name === one.name && other.about === one.about) === i,
    ),
    tooMany:
      meant.length > 0
        ? null
        : phrase`${name} has ${plural(most, "1 argument", "# arguments")}, and this is argument ${argument + 1}`,
  };
}

/** Which argument it is. The last may stand for more of its kind. */
function currentOf(takes: readonly Taken[], argument: number): number {
  if (argument < takes.length) return argument;
  return takes.at(-1)?.text.includes("…") ? takes.length - 1 : -1;
}

const takenOf = (takes: Takes, unit: Unit): readonly Taken[] =>
  Object.entries(takes).map(([name, take]) => ({
    name,
    text: argumentText(name, take),
    about: translated(take.about),
    values: allowed(take, unit),
  }));

function formsOf(name: string, unit: Unit): readonly (readonly Taken[])[] {
  const declaration = catalogue.get(name);
  if (declaration) {
    const { takes, block } = declaration;
    return (block ? [block.takes, takes] : [takes]).map((form) => takenOf(form, unit));
  }
  const builtIn = builtIns.get(name);
  if (!builtIn) return [];
  return [
    Object.entries(builtIn.takes).map(([text, about]) => ({
      name: text.replace(/[[\]…]/g, ""),
      text,
      about,
      values: "",
    })),
  ];
}
