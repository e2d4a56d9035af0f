/**
 * Runs a declared function: checks the arguments, computes, and collects steps and shapes.
 * Nothing is thrown past this file; a call that can't be answered is refused in a sentence.
 */
import { type Argument, checkArguments, isList, takesOf } from "./arguments.ts";
import { planOnce } from "./cutting/lay-question.ts";
import { joinsWith } from "./cutting/piecing.ts";
import { type Decimal, withDecimalMark } from "./decimal.ts";
import type { CallContext, Declaration, EdgeStrip } from "./define.ts";
import { withCommas } from "./drawing/decimal-commas.ts";
import type { Shape } from "./drawing/shapes.ts";
import { DEFAULT_MARK, type TapeMark, tapeTextBeside } from "./fractions.ts";
import type { JoinPlanner, Planner } from "./lay.ts";
import { rememberLike, rememberWithObject } from "./memo.ts";
import { asRead, phrase, rewritten, translated } from "./phrase.ts";
import { type Piece, writePiece } from "./pieces/piece.ts";
import { type CellOfCall, type CellOfList, Refusal } from "./refusal.ts";
import { convert, type Unit } from "./units.ts";
import { unusualSentences } from "./unusual-arguments.ts";
import type { Body } from "./worn/body.ts";
import type { Garment } from "./worn/garment.ts";

export type { Argument };

export interface Setting {
  readonly unit: Unit;
  readonly mark?: TapeMark;
  /** The decimal mark in texts: refusals, verdicts, sentences and labels. Answers are plain numbers. */
  readonly decimal?: Decimal | undefined;
  readonly plan?: Planner;
  /** Hears what the function itself says is uncertain about its answer. */
  readonly doubt?: (sentence: string) => void;
  /** Hears which cells of its lists the function's verdict is about, and why. */
  readonly points?: (at: CellOfCall, sentence: string) => void;
  /** Hears which cells of its lists the answer rests on. */
  readonly takes?: (at: CellOfCall) => void;
  /** Hears that the answer is an estimate, and of what. */
  readonly estimates?: (sentence: string) => void;
  /** Where joins are looked for; when left out, in the call itself, with lays of `plan`. */
  readonly joins?: JoinPlanner;
}

/** A call without an answer, and the reason: "hip is empty: a length is needed there". */
export interface Refused {
  readonly refusal: string;
  /** The one cell that it is about. */
  readonly at?: CellOfCall;
}

export interface Step {
  readonly name: string;
  /** A formula in OpenFormula over arguments and earlier steps, or a sentence when `formula` is false. */
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
  /** A sentence for each argument, or relation among arguments, that is outside what is usual, and for what is uncertain about the answer. */
  readonly unusual: readonly string[];
  readonly shapes: readonly Shape[];
  /** Why an answer has no drawing although its function draws, in a sentence; "" else. */
  readonly undrawn: string;
}

export const isRefused = (answer: unknown): answer is Refused =>
  typeof answer === "object" && answer !== null && "refusal" in answer;

/** The answer of one call, as a cell holds it: pieces as path data. */
export function run(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): number | string | Refused {
  const answer = () =>
    attempt(declaration, setting, () =>
      asCell(compute(declaration, args, setting).answer, declaration, setting),
    );
  if (declaration.returns !== "piece") return answer();
  const memory = piecesMade(declaration, () => rememberLike(MAX_PIECES_OF_A_FUNCTION, isSameCall));
  return memory({ args, unit: setting.unit, mark: setting.mark }, answer);
}

interface PieceCall {
  readonly args: readonly Argument[];
  readonly unit: Unit;
  readonly mark: TapeMark | undefined;
}

/** Kept because pieces take longest to make, and the drawing, the working and the grid each ask for the same one. */
const piecesMade = rememberWithObject<Declaration, PieceMemory>();
type PieceMemory = ReturnType<typeof rememberLike<PieceCall, number | string | Refused>>;
const MAX_PIECES_OF_A_FUNCTION = 4;

const isSameCall = (a: PieceCall, b: PieceCall): boolean =>
  a.unit === b.unit &&
  a.mark === b.mark &&
  a.args.length === b.args.length &&
  a.args.every((arg, i) => isSame(arg, b.args[i]!));

const isSame = (a: Argument, b: Argument): boolean =>
  a === b || (isList(a) && isList(b) && a.length === b.length && a.every((one, i) => one === b[i]));

/** The answer with its arguments, steps and shapes. */
export function explain(declaration: Declaration, args: readonly Argument[], setting: Setting): Explanation {
  const steps: Step[] = [];
  let given: Readonly<Record<string, Argument>> = {};
  let shapes: readonly Shape[] = [];
  let unusual: readonly string[] = [];
  let undrawn = "";
  const doubts: string[] = [];
  const hearing = { ...setting, doubt: (sentence: string) => doubts.push(sentence) };
  const answer = attempt(declaration, setting, () => {
    const done = compute(declaration, args, hearing, steps, (raw) => {
      given = raw;
    });
    unusual = [...unusualSentences(declaration, args, setting), ...doubts];
    const numbers = steps.flatMap(({ name, value }) =>
      typeof value === "number" ? [[name, value] as const] : [],
    );
    const found = Object.fromEntries(numbers);
    // A drawing that fails takes nothing from the answer.
    const drawn = attempt(declaration, setting, () => {
      shapes = declaration.draw?.(done.checked as never, found, done.answer, done.context) ?? [];
      return "";
    });
    if (isRefused(drawn)) undrawn = drawn.refusal;
    if (setting.decimal === "comma") shapes = shapes.map((shape) => withCommas(shape));
    return asCell(done.answer, declaration, setting);
  });
  return { answer, given, steps, unusual, shapes, undrawn };
}

/** What `made` makes of the garment of one call on a figure of these measurements; null when the function has none or the call is refused. */
export function garmentOf<Made>(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
  body: Body,
  made: (garment: Garment, say: (length: number) => string) => Made,
): Made | null {
  if (!declaration.worn) return null;
  const steps: Step[] = [];
  let answer: Made | null = null;
  attempt(declaration, setting, () => {
    const { checked, context } = compute(declaration, args, setting, steps);
    const figures = steps.filter(({ value }) => typeof value === "number");
    const found = Object.fromEntries(figures.map(({ name, value }) => [name, value as number]));
    const { cm, say } = context;
    answer = made(declaration.worn!(checked as never, found, { cm, say, body }), say);
    return 0;
  });
  return answer;
}

/** The upper edge and the depth of the panel of one call; null when its function has none that may be no skirt, or the call is refused. */
export function panelOf(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): { readonly top: number; readonly depth: number } | null {
  const { panel } = declaration;
  if (!panel) return null;
  const steps: Step[] = [];
  let found: { top: number; depth: number } | null = null;
  attempt(declaration, setting, () => {
    const { checked } = compute(declaration, args, setting, steps);
    const top = steps.find(({ name }) => name === panel.top)?.value;
    found = { top: Number(top), depth: Number(checked[panel.depth]) };
    return 0;
  });
  return found;
}

/** What stands beside the answer of one call, in a sentence; "" when nothing does or the call is refused. */
export function besideAnswer(declaration: Declaration, args: readonly Argument[], setting: Setting): string {
  const { beside } = declaration;
  if (!beside) return "";
  const sentence = attempt(declaration, setting, () => {
    const { checked, answer, context } = compute(declaration, args, setting, []);
    return withDecimalMark(beside(checked as never, answer, context), setting.decimal);
  });
  return typeof sentence === "string" ? sentence : "";
}

/** The strip that one call's edge is marked by; null when the function marks no edge or the call is refused. */
export function stripOf(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
): EdgeStrip | null {
  if (!declaration.strip) return null;
  const steps: Step[] = [];
  let strip: EdgeStrip | null = null;
  attempt(declaration, setting, () => {
    const { checked, answer } = compute(declaration, args, setting, steps);
    const figures = steps.filter(({ value }) => typeof value === "number");
    const found = Object.fromEntries(figures.map(({ name, value }) => [name, value as number]));
    strip = declaration.strip!(checked as never, found, answer);
    return 0;
  });
  return strip;
}

function compute(
  declaration: Declaration,
  args: readonly Argument[],
  setting: Setting,
  steps?: Step[],
  onGiven?: (given: Readonly<Record<string, Argument>>) => void,
) {
  let columns: Readonly<Record<string, readonly number[]>> = {};
  const find = ({ argument, cell }: CellOfList): CellOfCall | undefined => {
    const position =
      typeof argument === "string"
        ? Object.keys(takesOf(declaration, args)).indexOf(argument)
        : args.indexOf(argument as Argument);
    if (position >= 0) return { position, cell };
    const inBlock = typeof argument === "string" ? columns[argument]?.[cell] : undefined;
    return inBlock === undefined ? undefined : { position: 0, cell: inBlock };
  };
  try {
    const checked = checkArguments(declaration, args, setting, onGiven, (cells) => {
      columns = cells;
    });
    const context = callContext(setting, find, steps);
    const answer = declaration.compute(checked as never, context);
    return { checked, answer, context };
  } catch (reason) {
    throw reason instanceof Refusal && reason.at
      ? new Refusal(reason.sentence, reason.at, find(reason.at))
      : reason;
  }
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
      return {
        refusal: withDecimalMark(asRead(reason.sentence(lengthTextIn(setting))), setting.decimal),
        ...(reason.found && { at: reason.found }),
      };
    return { refusal: phrase`${declaration.name} failed on these values; please check them one by one` };
  }
}

function asCell(
  answer: number | string | Piece,
  declaration: Declaration,
  { decimal }: Setting,
): number | string {
  if (typeof answer === "object") return writePiece(answer);
  if (typeof answer === "string") return inBook(answer, decimal);
  if (typeof answer === "number" && !Number.isFinite(answer))
    throw new Refusal(phrase`${declaration.name} has no finite answer for these values`);
  return answer;
}

/** A text as the book holds it. */
function inBook(answer: string, decimal: Decimal | undefined): string {
  const text = withDecimalMark(answer, decimal);
  if (text !== answer) rewritten(answer, text, (words) => withDecimalMark(words, decimal));
  return text;
}

/** Lengths in words of the book's tape. */
const lengthTextIn =
  ({ unit, mark = DEFAULT_MARK[unit] }: Setting): CallContext["say"] =>
  (length, ...beside) =>
    `${tapeTextBeside(length, beside, unit, mark)} ${unit}`;

function callContext(
  setting: Setting,
  find: (at: CellOfList) => CellOfCall | undefined,
  steps?: Step[],
): CallContext {
  const mark = setting.mark ?? DEFAULT_MARK[setting.unit];
  const plan =
    setting.plan ??
    (() => ({ refusal: phrase`the pieces can't be laid here, because no lay planner is available` }));
  const points: CallContext["points"] = (at, sentence) => {
    const found = find(at);
    if (found) setting.points?.(found, withDecimalMark(asRead(sentence), setting.decimal));
  };
  return {
    step: (name, rule, value) => {
      steps?.push({ name, rule, formula: true, value });
      return value;
    },
    measure: (name, sentence, value) => {
      const said = () => (typeof sentence === "string" ? translated(sentence) : sentence());
      steps?.push({ name, rule: withDecimalMark(said(), setting.decimal), formula: false, value });
      return value;
    },
    cm: (figure) => convert(figure, "cm", setting.unit),
    say: lengthTextIn(setting),
    doubt: (sentence, at) => {
      setting.doubt?.(sentence);
      if (at) points(at, sentence);
    },
    points,
    takes: (at) => {
      const found = find(at);
      if (found) setting.takes?.(found);
    },
    estimates: (sentence) => setting.estimates?.(withDecimalMark(sentence, setting.decimal)),
    plan: steps ? planOnce(plan) : plan,
    joins: setting.joins ?? joinsWith(plan),
    unit: setting.unit,
    mark,
    decimal: setting.decimal ?? "point",
  };
}
