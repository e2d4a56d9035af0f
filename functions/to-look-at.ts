/** What there is to look at beside the answer of a call: what is unusual in its arguments, and what is uncertain about it. */
import { type Argument, takesOf } from "./arguments.ts";
import { withDecimalMark } from "./decimal.ts";
import type { Declaration } from "./define.ts";
import { isRefused, run, type Setting } from "./run.ts";
import { type Unusual, unusualArguments } from "./unusual-arguments.ts";

/**
 * The sentences about what is unusual in the arguments of a call, each beginning with the
 * function's name: "CUFF: the depth 6 1/2 in is above the wrist 2 1/2 in; …". The list is empty
 * when all arguments are usual, and when the call is refused, because the refusal says more.
 */
export const unusualIn = (
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): readonly string[] => unusualAt(declaration, args, setting).map(({ sentence }) => sentence);

/** The same with the positions of the arguments in the call that each sentence is about, counted from 0. */
export function unusualAt(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): readonly { readonly sentence: string; readonly positions: readonly number[] }[] {
  let found: readonly Unusual[];
  try {
    found = unusualArguments(declaration, args, setting);
  } catch {
    // Arguments of the wrong kind, which no rule can compare: the call is refused for them.
    return [];
  }
  if (found.length === 0 || isRefused(run(declaration, args, setting))) return [];
  const order = Object.keys(takesOf(declaration, args));
  return found.map(({ sentence, names }) => ({
    sentence: withDecimalMark(`${declaration.name}: ${sentence}`, setting.decimal),
    positions: names.map((name) => order.indexOf(name)),
  }));
}

/**
 * All there is to look at beside the answer of a call: what is unusual in its arguments, then what is
 * uncertain about its answer. The function is worked for it.
 */
export function toLookAt(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): readonly string[] {
  const doubts: string[] = [];
  const doubt = (sentence: string) =>
    doubts.push(withDecimalMark(`${declaration.name}: ${sentence}`, setting.decimal));
  run(declaration, args, { ...setting, doubt });
  return [...unusualIn(declaration, args, setting), ...doubts];
}
