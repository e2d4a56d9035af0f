/**
 * Runs a declared function: checks the arguments, computes, and collects steps and shapes.
 * Nothing is thrown past this file; a call that can't be answered is refused in a sentence.
 */
import { type Argument, checkArguments, isList } from "./arguments.ts";
import { questionText } from "./cutting/lay-question.ts";
import { type Decimal, withDecimalMark } from "./decimal.ts";
import type { CallContext, Declaration } from "./define.ts";
import type { Shape } from "./drawing/shapes.ts";
import { DEFAULT_MARK, type TapeMark, tapeTextBeside } from "./fractions.ts";
import type { Planner } from "./lay.ts";
import { type Piece, writePiece } from "./pieces/piece.ts";
import { Refusal } from "./refusal.ts";
import { convert, type Unit } from "./units.ts";
import { unusualSentences } from "./unusual-arguments.ts";

export type { Argument };

export interface Setting {
  readonly unit: Unit;
  readonly mark?: TapeMark;
  /** The decimal mark in texts: refusals, verdicts, sentences and labels. Answers are plain numbers. */
  readonly decimal?: Decimal | undefined;
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
  /** What is not usual about the arguments, in sentences. */
  readonly unusual: readonly string[];
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
    attempt(declaration, setting, () =>
      asCell(compute(declaration, args, setting).answer, declaration, setting),
    );
  return declaration.returns === "piece" ? remembered(declaration, args, setting, work) : work();
}

/**
 * What is not usual about the arguments of a call that is answered, in sentences that begin with
 * the function's name: "CUFF: the depth 6 1/2 in is above the wrist 2 1/2 in; …". Empty when all
 * is as usual, and when the call is refused, which says more.
 */
export function unusualIn(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): readonly string[] {
  let found: readonly string[];
  try {
    found = unusualSentences(declaration, args, setting);
  } catch {
    // Arguments of the wrong kind, which no rule can compare: the call is refused for them.
    return [];
  }
  if (found.length === 0 || isRefused(run(declaration, args, setting))) return [];
  return found.map((sentence) => withDecimalMark(`${declaration.name}: ${sentence}`, setting.decimal));
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
  let odd: readonly string[] = [];
  const answer = attempt(declaration, setting, () => {
    const done = compute(declaration, args, setting, steps, (raw) => {
      given = raw;
    });
    odd = unusualSentences(declaration, args, setting);
    const numbers = steps.flatMap(({ name, value }) =>
      typeof value === "number" ? [[name, value] as const] : [],
    );
    const found = Object.fromEntries(numbers);
    shapes = declaration.draw?.(done.checked as never, found, done.answer, done.context) ?? [];
    if (setting.decimal === "comma") shapes = shapes.map((shape) => withCommas(shape));
    return asCell(done.answer, declaration, setting);
  });
  return { answer, given, steps, unusual: odd, shapes };
}

function compute(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
  steps?: Step[],
  heard?: (raw: Readonly<Record<string, Argument>>) => void,
) {
  const checked = checkArguments(declaration, args, setting, heard);
  const context = callContext(setting, steps);
  const answer = declaration.compute(checked as never, context);
  return { checked, answer, context };
}

function attempt(
  declaration: Declaration,
  setting: Setting,
  act: () => number | string,
): number | string | Refused {
  try {
    return act();
  } catch (reason) {
    if (reason instanceof Refusal)
      return { refusal: withDecimalMark(reason.sentence(sayIn(setting)), setting.decimal) };
    return { refusal: `${declaration.name} failed on these values; please check them one by one` };
  }
}

function asCell(
  answer: number | string | Piece,
  declaration: Declaration,
  { decimal }: Setting,
): number | string {
  if (typeof answer === "object") return writePiece(answer);
  if (typeof answer === "string") return withDecimalMark(answer, decimal);
  if (typeof answer === "number" && !Number.isFinite(answer)) {
    throw new Refusal(`${declaration.name} has no finite answer for these values`);
  }
  return answer;
}

/** Lengths in words of the book's tape. */
function sayIn({ unit, mark = DEFAULT_MARK[unit] }: Setting): CallContext["say"] {
  return (length, ...beside) => `${tapeTextBeside(length, beside, unit, mark)} ${unit}`;
}

function callContext(setting: Setting, steps?: Step[]): CallContext {
  const mark = setting.mark ?? DEFAULT_MARK[setting.unit];
  const plan =
    setting.plan ??
    (() => ({ refusal: "the pieces can't be laid here, because no lay planner is available" }));
  const note = (formula: boolean) => (name: string, rule: string, value: number | string) => {
    steps?.push({ name, rule: formula ? rule : withDecimalMark(rule, setting.decimal), formula, value });
    return value as never;
  };
  return {
    step: note(true),
    measure: note(false),
    cm: (figure) => convert(figure, "cm", setting.unit),
    say: sayIn(setting),
    plan: steps ? remembering(plan) : plan,
    unit: setting.unit,
    mark,
    decimal: setting.decimal ?? "point",
  };
}

/** A shape whose words have decimal commas. */
function withCommas(shape: Shape): Shape {
  if (shape.kind === "note") return { ...shape, text: withDecimalMark(shape.text, "comma") };
  return "label" in shape && shape.label ? { ...shape, label: withDecimalMark(shape.label, "comma") } : shape;
}

/** Does not lay the same question twice in one call: `compute` asks for the figures, then `draw` for the picture. */
function remembering(plan: Planner): Planner {
  const known = new Map<string, ReturnType<Planner>>();
  return (question) => {
    const text = questionText(question);
    const lay = known.get(text) ?? plan(question);
    known.set(text, lay);
    return lay;
  };
}
