/**
 * What is unusual about the arguments of a call, in sentences: most often two values have been
 * swapped. The call is answered all the same.
 */

import { type Argument, isList, takesOf, withUnit } from "./arguments.ts";
import type { Cell, Declaration, Kind, Take, UsualRelation } from "./define.ts";
import { DEFAULT_MARK, type TapeMark, tapeTextBeside } from "./fractions.ts";
import { limitText, roundLimit, scaleOf } from "./limits.ts";
import { numberText } from "./number-text.ts";
import { phrase, translated } from "./phrase.ts";
import { type ArgumentValues, type Rule, type RuleValue, ruleOf } from "./plain-rule.ts";
import type { Unit } from "./units.ts";

interface Scale {
  readonly unit: Unit;
  readonly mark?: TapeMark;
}

const COUNTED = new Set<Kind>(["length", "area", "count", "share", "angle", "days", "money", "figure"]);

/** What is unusual about some arguments of a call, in a sentence without the function's name. */
export interface Unusual {
  readonly sentence: string;
  /** The arguments that it is about. */
  readonly names: readonly string[];
}

/** The sentences about the arguments of a call that is answered. */
export const unusualSentences = (
  declaration: Declaration,
  args: readonly Argument[],
  scale: Scale,
): string[] => unusualArguments(declaration, args, scale).map(({ sentence }) => sentence);

/** The same with the arguments that each sentence is about. */
export function unusualArguments(
  declaration: Declaration,
  args: readonly Argument[],
  scale: Scale,
): Unusual[] {
  const takes = takesOf(declaration, args);
  if (!declaration.usual && !Object.values(takes).some((take) => take.usual)) return [];
  const names = inCentimetres(takes, args, scale);
  const found: Unusual[] = [];
  const named = new Set<string>();
  for (const one of declaration.usual ?? []) {
    const rule = ruleOf(typeof one === "string" ? one : one.rule);
    if (!rule.names.every((name) => name in names) || rule.holds(names)) continue;
    for (const name of rule.names) named.add(name);
    const sentence = phrase`${relationSentence(one, rule, names, declaration, scale)}${question(rule, takes)}`;
    found.push({ sentence, names: rule.names });
  }
  for (const [name, take] of Object.entries(takes)) {
    if (!take.usual || !(name in names) || named.has(name)) continue;
    const outside = outsideRange(take, names[name]!);
    if (outside !== null) found.push({ sentence: rangeSentence(name, take, outside, scale), names: [name] });
  }
  return found;
}

/** The numbers and texts of a call by name, lengths in centimetres; lists without their blanks; nothing that is left out. */
function inCentimetres(
  takes: Declaration["takes"],
  args: readonly Argument[],
  { unit }: Scale,
): ArgumentValues {
  const names: Record<string, RuleValue> = {};
  Object.entries(takes).forEach(([name, take], i) => {
    const value = args[i] ?? (typeof take.otherwise === "object" ? null : (take.otherwise ?? null));
    if (value === null || take.kind === "piece" || take.kind === "block") return;
    const change = (one: Cell): number | string | boolean => {
      if (typeof one === "number") return one / scaleOf(take.kind, unit);
      return take.choices ? String(one).trim().toLowerCase() : (one ?? "");
    };
    const list = isList(value) ? value.filter((one) => one !== null && one !== "").map(change) : null;
    names[name] = list === null ? change(value as Cell) : take.many ? list : list[0]!;
  });
  return names;
}

function outsideRange({ usual, otherwise }: Take, value: RuleValue): number | null {
  const [least, most] = usual!;
  const list = typeof value === "object" ? value : [value];
  for (const one of list) {
    if (typeof one !== "number" || one === otherwise) continue;
    if (one < least - 1e-9 * Math.abs(least) || one > most + 1e-9 * Math.abs(most)) return one;
  }
  return null;
}

function rangeSentence(name: string, { kind, usual }: Take, value: number, scale: Scale): string {
  const [least, most] = usual!;
  const beyond = value < least ? least : most;
  const shown = shownValue(value, kind, [beyond], scale);
  const bare = limitText(beyond, kind, scale.unit);
  const round = beyond === 0 || kind === "angle" ? bare : withUnit(bare, kind, scale.unit);
  const limit = isBetween(value, beyond, kind, scale.unit) ? shownValue(beyond, kind, [value], scale) : round;
  return value < least
    ? phrase`the ${name} ${shown} is below ${limit}, the usual minimum; is that right?`
    : phrase`the ${name} ${shown} is above ${limit}, the usual maximum; is that right?`;
}

/** Whether a value beyond a limit is not beyond the round figure that a tape shows for it: 60 cm are 25 in, so 24 1/2 in lie between. */
function isBetween(value: number, limit: number, kind: Kind, unit: Unit): boolean {
  const shown = roundLimit(limit, kind, unit) / scaleOf(kind, unit);
  return value < limit ? value >= shown : value <= shown;
}

/** The sentence for a broken rule: its own, or one made from its single comparison. */
function relationSentence(
  one: UsualRelation,
  rule: Rule,
  names: ArgumentValues,
  { takes }: Declaration,
  scale: Scale,
): string {
  const all = rule.names.map((name) => names[name]!).filter((value) => typeof value === "number");
  const valueText = (name: string) => {
    const value = names[name]!;
    const { kind } = takes[name]!;
    return typeof value === "number" ? shownValue(value, kind, all, scale) : String(value);
  };
  if (typeof one !== "string")
    return translated(one.says).replace(/\{(\w+)\}/g, (_, name: string) => valueText(name));
  if (!rule.sides) throw new Error(`the rule ${one} needs its own sentence`);
  const [left, right] = rule.sides;
  const [a, b] = [left.value(names), right.value(names)] as [number, number];
  const kind = takes[rule.names[0]!]!.kind;
  const side = (text: string, value: number, other: number) => {
    const shown = shownValue(value, kind, [other], scale);
    if (text in takes) return phrase`the ${text} ${shown}`;
    return /^[\d.]+$/.test(text) ? shown : phrase`${text}, which is ${shown},`;
  };
  const [first, other] = [side(left.text, a, b), side(right.text, b, a).replace(/,$/, "")];
  if (a > b) return phrase`${first} is above ${other}`;
  return a < b ? phrase`${first} is below ${other}` : phrase`${first} is as much as ${other}`;
}

function question(rule: Rule, takes: Declaration["takes"]): string {
  const count = rule.names.filter((name) => COUNTED.has(takes[name]!.kind)).length;
  if (count > 2) return phrase`; is each in its right place?`;
  return count === 2 ? phrase`; are they swapped?` : phrase`; is that right?`;
}

/** A value in centimetres as the tape of the book shows it, on a finer mark where it would read like one of those beside it. */
function shownValue(value: number, kind: Kind, beside: readonly number[], { unit, mark }: Scale): string {
  const scale = scaleOf(kind, unit);
  if (kind === "length") {
    const others = beside.map((one) => one * scale);
    return `${tapeTextBeside(value * scale, others, unit, mark ?? DEFAULT_MARK[unit])} ${unit}`;
  }
  return kind === "money" ? value.toFixed(2) : withUnit(numberText(value * scale), kind, unit);
}
