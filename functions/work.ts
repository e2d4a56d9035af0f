/**
 * Runs a declared function: checks the arguments, computes, and collects steps and shapes.
 * Nothing is thrown past this file; what can't be worked is refused in a sentence.
 */
import { questionText } from "./cut.ts";
import type { Bench, Cell, Declaration, Kind, Take } from "./define.ts";
import { Refusal } from "./define.ts";
import type { Shape } from "./drawing.ts";
import { type Mark, tapeText, USUAL_MARK } from "./fractions.ts";
import type { Planner } from "./lay.ts";
import { type Piece, readPiece, writePiece } from "./piece.ts";
import { convert, type Unit } from "./units.ts";

/** An argument as the caller has it: a cell's value, or the values of a range, blanks as null. */
export type Argument = Cell | readonly Cell[];

export interface Setting {
  readonly unit: Unit;
  readonly mark?: Mark;
  readonly plan?: Planner;
}

/** No answer, and why: "hip is empty: give it a length". */
export interface Refused {
  readonly refusal: string;
}

export interface Step {
  readonly name: string;
  /** A formula in OpenFormula over arguments and earlier steps, or a sentence when `counted` is false. */
  readonly rule: string;
  /** True when `rule` is a formula. */
  readonly formula: boolean;
  readonly value: number | string;
}

export interface Explanation {
  readonly answer: number | string | Refused;
  /** The arguments as used, defaults filled in, by name. */
  readonly given: Readonly<Record<string, Argument>>;
  readonly steps: readonly Step[];
  readonly shapes: readonly Shape[];
}

export const isRefused = (answer: unknown): answer is Refused =>
  typeof answer === "object" && answer !== null && "refusal" in answer;

/** The answer of one call, as a cell holds it: pieces as path data. */
export function run(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): number | string | Refused {
  const work = () =>
    attempt(declaration, () => asCell(compute(declaration, args, setting).answer, declaration));
  return declaration.returns === "piece" ? remembered(declaration, args, setting, work) : work();
}

interface Known {
  readonly args: readonly Argument[];
  readonly setting: Setting;
  readonly answer: number | string | Refused;
}

/** Pieces take longest to make, and the drawing, the working and the grid each ask for the same one. */
const pieces = new Map<Declaration, Known[]>();
const MOST_KNOWN = 4;

function remembered(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
  work: () => number | string | Refused,
): number | string | Refused {
  let known = pieces.get(declaration);
  if (!known) {
    known = [];
    pieces.set(declaration, known);
  }
  const found = known.find(
    (one) =>
      one.setting.unit === setting.unit &&
      one.setting.mark === setting.mark &&
      one.args.length === args.length &&
      one.args.every((arg, i) => isSame(arg, args[i]!)),
  );
  if (found) return found.answer;
  const answer = work();
  if (known.length >= MOST_KNOWN) known.pop();
  known.unshift({
    args,
    setting: { unit: setting.unit, ...(setting.mark && { mark: setting.mark }) },
    answer,
  });
  return answer;
}

const isSame = (a: Argument, b: Argument): boolean =>
  a === b || (isList(a) && isList(b) && a.length === b.length && a.every((one, i) => one === b[i]));

/** The answer with its arguments, steps and shapes. */
export function explain(declaration: Declaration, args: readonly Argument[], setting: Setting): Explanation {
  const steps: Step[] = [];
  let given: Readonly<Record<string, Argument>> = {};
  let shapes: readonly Shape[] = [];
  const answer = attempt(declaration, () => {
    const done = compute(declaration, args, setting, steps, (raw) => {
      given = raw;
    });
    const numbers = steps.flatMap(({ name, value }) =>
      typeof value === "number" ? [[name, value] as const] : [],
    );
    const found = Object.fromEntries(numbers);
    shapes = declaration.draw?.(done.checked as never, found, done.answer, done.bench) ?? [];
    return asCell(done.answer, declaration);
  });
  return { answer, given, steps, shapes };
}

/** The checked arguments of a call by name, or the refusal: for callers that need a piece or a question. */
function compute(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
  steps?: Step[],
  heard?: (raw: Readonly<Record<string, Argument>>) => void,
) {
  const names = Object.keys(declaration.takes);
  if (args.length > names.length) {
    throw new Refusal(
      `${declaration.name} takes at most ${names.length} ${names.length === 1 ? "argument" : "arguments"}, not ${args.length}`,
    );
  }
  const raw: Record<string, Argument> = {};
  const checked: Record<string, unknown> = {};
  names.forEach((name, i) => {
    const take = declaration.takes[name]!;
    let value: Argument | undefined = args[i];
    if ((value === undefined || value === null) && take.otherwise !== undefined) value = take.otherwise;
    if (value === undefined) throw new Refusal(`${name} is missing: ${article(take.kind)} is needed there`);
    raw[name] = value;
  });
  heard?.(raw);
  for (const name of names) {
    const take = declaration.takes[name]!;
    checked[name] =
      raw[name] === null && take.otherwise === null ? null : checkArgument(name, take, raw[name]!, setting);
  }
  const tools = bench(setting, steps);
  const answer = declaration.work(checked as never, tools);
  return { checked, answer, bench: tools };
}

function attempt(declaration: Declaration, act: () => number | string): number | string | Refused {
  try {
    return act();
  } catch (reason) {
    if (reason instanceof Refusal) return { refusal: reason.message };
    return { refusal: `${declaration.name} failed on these figures; please check them one by one` };
  }
}

function asCell(answer: number | string | Piece, declaration: Declaration): number | string {
  if (typeof answer === "object") return writePiece(answer);
  if (typeof answer === "number" && !Number.isFinite(answer)) {
    throw new Refusal(`${declaration.name} has no finite answer for these figures`);
  }
  return answer;
}

function bench(setting: Setting, steps?: Step[]): Bench {
  const mark = setting.mark ?? USUAL_MARK[setting.unit];
  const plan = setting.plan ?? (() => ({ refusal: "there is no lay planner here to lay the pieces" }));
  const note = (formula: boolean) => (name: string, rule: string, value: number | string) => {
    steps?.push({ name, rule, formula, value });
    return value as never;
  };
  return {
    step: note(true),
    measure: note(false),
    cm: (figure) => convert(figure, "cm", setting.unit),
    say: (length) => `${tapeText(length, setting.unit, mark)} ${setting.unit}`,
    plan: steps ? remembering(plan) : plan,
    unit: setting.unit,
    mark,
  };
}

/** Does not lay the same question twice in one call: `work` asks for the figures, then `draw` for the picture. */
function remembering(plan: Planner): Planner {
  const known = new Map<string, ReturnType<Planner>>();
  return (question) => {
    const text = questionText(question);
    const lay = known.get(text) ?? plan(question);
    known.set(text, lay);
    return lay;
  };
}

const NOUNS: Record<Kind, string> = {
  length: "a length", area: "an area", count: "a whole number", share: "a number", angle: "an angle in degrees",
  days: "a date or a number of days", money: "a price", figure: "a number", flag: "TRUE or FALSE", text: "a text",
  piece: "a piece", verdict: "a text",
}; // biome-ignore format: a table

const article = (kind: Kind): string => NOUNS[kind];

function checkArgument(name: string, take: Take, value: Argument, setting: Setting): unknown {
  if (!take.many) {
    if (!isList(value)) return checkOne(name, take, value, setting);
    if (value.length === 1) return checkOne(name, take, value[0]!, setting);
    throw new Refusal(`${name} must be one cell, not a range of ${value.length}`);
  }
  const list = isList(value) ? value : [value];
  return list.map((one, i) => {
    if ((one === null || one === "") && take.blanks) return null;
    return checkOne(list.length > 1 ? `${name}, number ${i + 1},` : name, take, one, setting);
  });
}

const isList = (value: Argument): value is readonly Cell[] => Array.isArray(value);

function checkOne(name: string, take: Take, value: Cell, setting: Setting): unknown {
  if (value === null || value === "") {
    if (value === "" && take.kind === "text" && !take.choices) return "";
    throw new Refusal(`${name} is empty: ${article(take.kind)} is needed there`);
  }
  switch (take.kind) {
    case "text":
    case "verdict":
      return checkText(name, take, value);
    case "flag":
      return checkFlag(name, value);
    case "piece":
      return checkPiece(name, value);
    default:
      return checkNumber(name, take, value, setting);
  }
}

const quoted = (value: Cell): string => {
  if (typeof value !== "string") return String(value).toUpperCase();
  return `"${value.length > 24 ? `${value.slice(0, 21)}...` : value}"`;
};

function checkText(name: string, take: Take, value: Cell): string {
  const text = String(value);
  if (!take.choices) return text;
  const found = take.choices.find((choice) => choice === text.trim().toLowerCase());
  if (found === undefined)
    throw new Refusal(`${name} must be ${orList(take.choices.map(quoted))}, not ${quoted(value)}`);
  return found;
}

function orList(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}

function checkFlag(name: string, value: Cell): boolean {
  const told = typeof value === "string" ? value.trim().toLowerCase() : value;
  if (told === true || told === 1 || told === "yes" || told === "true") return true;
  if (told === false || told === 0 || told === "no" || told === "false") return false;
  throw new Refusal(`${name} must be TRUE or FALSE, not ${quoted(value)}`);
}

function checkPiece(name: string, value: Cell): Piece {
  if (typeof value !== "string")
    throw new Refusal(`${name} must be a piece (an outline in path data), not ${quoted(value)}`);
  try {
    return readPiece(value);
  } catch (reason) {
    throw new Refusal(`${name} is no sound piece: ${(reason as Error).message}`);
  }
}

function checkNumber(name: string, take: Take, value: Cell, setting: Setting): number {
  if (typeof value !== "number")
    throw new Refusal(`${name} must be ${article(take.kind)}, not ${quoted(value)}`);
  if (!Number.isFinite(value)) throw new Refusal(`${name} must be a finite number, not ${value}`);
  const scale =
    take.kind === "length"
      ? convert(1, "cm", setting.unit)
      : take.kind === "area"
        ? convert(1, "cm", setting.unit) ** 2
        : 1;
  const unit =
    take.kind === "length"
      ? ` ${setting.unit}`
      : take.kind === "area"
        ? ` square ${setting.unit}`
        : take.kind === "angle"
          ? " degrees"
          : "";
  const bound = (limit: number) => `${Number((limit * scale).toPrecision(3))}${limit === 0 ? "" : unit}`;
  const given = Number(value.toPrecision(8));
  if (take.kind === "count" && !Number.isInteger(value))
    throw new Refusal(`${name} must be a whole number, not ${given}`);
  if (take.from !== undefined && value < take.from * scale * (1 - 1e-9)) {
    throw new Refusal(`${name} must be at least ${bound(take.from)}, not ${given}`);
  }
  if (take.to !== undefined && value > take.to * scale * (1 + 1e-9)) {
    throw new Refusal(`${name} must be at most ${bound(take.to)}, not ${given}`);
  }
  return value;
}
