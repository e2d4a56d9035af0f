/** Answers to questions asked before: the same question, to the last figure, is not laid twice. */
import type { Lay, LayQuestion } from "../../functions/lay.ts";

export type Answer = Lay | { readonly refusal: string };

/** A question that was asked, and its answer. */
export interface Kept {
  readonly question: LayQuestion;
  readonly answer: Answer;
}

/** A lay has no names in it, and is the same whatever it is made for; a refusal names its pieces. */
const isSame = ({ question, answer }: Kept, asked: LayQuestion): boolean =>
  isEqual(question, asked, "refusal" in answer ? NONE : NAMES);

const NAMES: ReadonlySet<string> = new Set(["name", "passing", "start", "tape"]);
const NONE: ReadonlySet<string> = new Set();

/** Keeps the newest answers, at most so many. Questions that differ in a figure have nothing in common. */
export class Memory {
  private readonly kept = new Map<number, Kept>();

  constructor(private readonly most: number) {}

  /** Whether the question was asked before. */
  has(question: LayQuestion): boolean {
    const known = this.kept.get(sumOf(question));
    return known !== undefined && isSame(known, question);
  }

  get all(): readonly Kept[] {
    return [...this.kept.values()];
  }

  answer(question: LayQuestion, work: () => Answer): Answer {
    const sum = sumOf(question);
    const known = this.kept.get(sum);
    if (known && isSame(known, question)) return known.answer;
    const answer = work();
    this.kept.delete(sum);
    if (this.kept.size >= this.most) this.kept.delete(this.kept.keys().next().value as number);
    this.kept.set(sum, { question, answer });
    return answer;
  }
}

/** A figure that is hardly ever the same for two questions: their figures added up, each with a weight of its own. */
export function sumOf({ pieces, cloths, gap, repeat, sharing }: LayQuestion): number {
  let sum = gap + 3 * repeat;
  let weight = 1;
  const add = (figure: number) => {
    sum += figure * weight;
    weight += 0.001;
  };
  for (const count of sharing?.left ?? []) add(1 + count);
  for (const { outline, quantity, turns } of pieces) {
    add(quantity);
    // The same pieces with and without a nap are asked side by side.
    add(turns.length);
    for (const turn of turns) add(turn);
    for (const [x, y] of outline) {
      add(x);
      add(y);
    }
  }
  for (const { width, length } of cloths) {
    add(width);
    add(length ?? -1);
  }
  return sum;
}

/** Whether two pieces of plain data are equal throughout, but for fields of these names. */
export function isEqual(a: unknown, b: unknown, but: ReadonlySet<string> = NONE): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a)) {
    if (!Array.isArray(b) || a.length !== b.length) return false;
    for (let i = 0; i < a.length; i += 1) if (!isEqual(a[i], b[i], but)) return false;
    return true;
  }
  const [own, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keysOf = (one: object) => Object.keys(one).filter((key) => !but.has(key));
  const keys = keysOf(own);
  return keys.length === keysOf(other).length && keys.every((key) => isEqual(own[key], other[key], but));
}
