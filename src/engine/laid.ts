/** The cells that lay pieces on cloth: what each asked when it was last calculated, and the answer it got. */

import { questionHash } from "../../functions/cutting/lay-question.ts";
import type { Kind } from "../../functions/define.ts";
import { tapeText } from "../../functions/fractions.ts";
import {
  type JoinQuestion,
  type Lay,
  type LayOrigin,
  type LayQuestion,
  type NoLay,
  originText,
  type Planner,
  searchTime,
} from "../../functions/lay.ts";
import { rememberWithObject } from "../../functions/memo.ts";
import { asRead, phrase } from "../../functions/phrase.ts";
import type { Book } from "../book/shape.ts";
import { addressKey, type CellAddress } from "./inside.ts";
import type { Rule } from "./show.ts";

export interface LaidLay {
  readonly question: LayQuestion;
  readonly answer: ReturnType<Planner>;
}

interface LaidCell {
  readonly address: CellAddress;
  readonly lays: LaidLay[];
  /** The joins that it waits for. */
  joins?: JoinQuestion;
}

export class LaidCells {
  readonly #cells = new Map<string, LaidCell>();
  /** Whether pieces were laid since this was last set to false. */
  hasNew = false;

  note(address: CellAddress, lay: LaidLay): void {
    // What has no lay bounds no other.
    if (!("refusal" in lay.answer)) this.hasNew = true;
    this.#cell(address).lays.push(lay);
  }

  noteJoins(address: CellAddress, joins: JoinQuestion): void {
    this.#cell(address).joins = joins;
  }

  #cell(address: CellAddress): LaidCell {
    const key = addressKey(address);
    const cell = this.#cells.get(key) ?? { address, lays: [] };
    this.#cells.set(key, cell);
    return cell;
  }

  /** The cell holds something else now, or its formula is about to be calculated again. */
  forget(address: CellAddress): void {
    this.#cells.delete(addressKey(address));
  }

  clear(): void {
    this.#cells.clear();
  }

  /** All of them, in the order in which they were worked. */
  get all(): readonly Readonly<LaidCell>[] {
    return [...this.#cells.values()];
  }

  lays(address: CellAddress): readonly LaidLay[] {
    return this.#cells.get(addressKey(address))?.lays ?? [];
  }
}

/** The lay of these that is being searched for elsewhere; null when all have an answer. */
export function pendingOf(lays: readonly LaidLay[]): NoLay | null {
  for (const { answer } of lays) if ("refusal" in answer && answer.pending) return answer;
  return null;
}

/** Whether a lay that was given meanwhile is better than the one that a cell was answered with. */
export function isLonger(before: LaidLay["answer"], now: LaidLay["answer"]): boolean {
  if ("refusal" in before || "refusal" in now) return false;
  const sum = (figures: readonly number[]) => figures.reduce((a, b) => a + b, 0);
  const missing = (lay: Lay) => sum(lay.missing.map(([, count]) => count));
  return (
    missing(now) < missing(before) ||
    (missing(now) === missing(before) && sum(now.lengths) < sum(before.lengths) * (1 - 1e-7))
  );
}

/** With more laid cells than this only those are worked anew that asked the very question of a new lay. */
export const MOST_BOUNDED = 40;

/** The laid cells that a change of the found lays concerns. */
export function concerned<T extends { readonly lays: readonly LaidLay[] }>(
  cells: readonly T[],
  old: Book["lays"],
  next: Book["lays"],
): readonly T[] {
  if (cells.length <= MOST_BOUNDED) return cells;
  const changed = new Set(Object.keys({ ...old, ...next }).filter((hash) => old[hash] !== next[hash]));
  return cells.filter(({ lays }) => lays.some(({ question }) => changed.has(hashOf(question))));
}

const rememberedHash = rememberWithObject<LayQuestion, string>();

/** The hash of a lay question, calculated once for each question object. */
export const hashOf = (question: LayQuestion): string =>
  rememberedHash(question, () => questionHash(question));

/** What a cell says and shows while its lay is being worked out: a length is at least what the area takes. */
export function pendingText(
  { refusal, pending }: NoLay,
  kind: Kind,
  { unit, mark, decimal }: Rule,
): { sentence: string; shown: string } {
  if (kind !== "length" || !pending || pending.least === 0) return { sentence: refusal, shown: "…" };
  const least = tapeText(pending.least, unit, mark, decimal);
  return {
    sentence: phrase`${refusal}; by its area it takes at least ${least} ${unit}`,
    shown: `≥ ${least}`,
  };
}

const QUICK: LayOrigin = { by: "quick" };

/**
 * How the least searched of these lays was found; null when pieces were laid nowhere. A lay of all pieces on cloth in
 * stock can't get better: beside other lays it does not count.
 */
export function leastSearched(lays: readonly LaidLay[]): LayOrigin | null {
  const found = lays.flatMap(({ question, answer }) =>
    "refusal" in answer ? [] : [{ answer, isOpen: question.cloths.some(({ length }) => length === null) }],
  );
  const open = found.filter(({ answer, isOpen }) => isOpen || answer.missing.length > 0);
  return leastSearchedOf((open.length > 0 ? open : found).map(({ answer }) => answer));
}

/** How the least searched of these lays was found; null for an empty list. */
export const leastSearchedOf = (lays: readonly Lay[]): LayOrigin | null =>
  lays.map(({ origin = QUICK }) => origin).toSorted((a, b) => worth(a) - worth(b))[0] ?? null;

/** Of two lays how the one was found that was searched for less; a lay that is not there counts for nothing. */
export const lessSearched = (a: LayOrigin | null, b: LayOrigin | null): LayOrigin | null =>
  !a || (b && worth(b) < worth(a)) ? b : a;

/** The longer a lay was searched for, the more; a lay by hand and a proved one need no search. */
export function worth(origin: LayOrigin): number {
  if (origin.by === "quick") return -1;
  if (origin.by === "hand") return 1e9;
  return origin.proved ? Number.POSITIVE_INFINITY : origin.seconds;
}

/** How a lay was found, in words that stand beside a value: "quick lay, a search may find a shorter one". */
export function laidText(origin: LayOrigin): string {
  if (origin.by === "quick") return phrase`quick lay, a search may find a shorter one`;
  if (origin.by === "hand") return asRead(originText(origin));
  if (origin.proved) return phrase`lay proved: no lay can be shorter`;
  return origin.seconds <= 0
    ? phrase`lay found by a search`
    : phrase`lay searched for ${searchTime(origin.seconds)}`;
}

/** The sign that stands beside a laid value: the value is about right, enough, proved, or laid by hand. */
export function laidSign(origin: LayOrigin): "≈" | "≤" | "✓" | "✎" {
  if (origin.by === "quick") return "≈";
  if (origin.by === "hand") return "✎";
  return origin.proved ? "✓" : "≤";
}

/** What each sign says, for a legend. */
export const LAID_SIGNS: readonly (readonly [sign: string, says: string])[] = [
  ["≈", phrase`a length from a quick lay: enough cloth, but a search may find a shorter lay`],
  ["≤", phrase`a length from a lay that was searched for: enough cloth, and probably little less would do`],
  ["✓", phrase`a length that is proved: no lay can be shorter`],
  ["✎", phrase`a length from a lay made by hand`],
  ["…", phrase`a length that is being worked out, or a cell that waits for one`],
];

/**
 * How much shorter a longer search may still make a lay, as a share of its length: what nine in ten
 * lays stayed within. Measured against a minute of search over forty random lists of 20 to 40 garment
 * pieces (tests/speed/garment-lays.speed.ts): quick 11.0 %, after 2 s 2.7, 5 s 1.5, 10 s 1.0, 20 s 0.4.
 * The table rounds up, since longer lists, which gain more slowly, were measured less.
 */
const UNCERTAIN: readonly (readonly [seconds: number, share: number])[] = [
  [20, 0.01],
  [10, 0.015],
  [5, 0.02],
  [2, 0.03],
  [1, 0.04],
];
const UNCERTAIN_QUICK = 0.11;

export function uncertaintyOf(origin: LayOrigin | null): number {
  if (!origin || (origin.by === "search" && origin.proved)) return 0;
  const searched = origin.by === "search" ? origin.seconds : 0;
  return UNCERTAIN.find(([seconds]) => searched >= seconds)?.[1] ?? UNCERTAIN_QUICK;
}

/** Whether two values that rest on these lays differ by less than a longer search may change them. */
export function isUnsure(
  a: unknown,
  b: unknown,
  origins: readonly [LayOrigin | null, LayOrigin | null],
): boolean {
  if (typeof a !== "number" || typeof b !== "number" || a === b) return false;
  return (
    Math.abs(a - b) <=
    Math.max(uncertaintyOf(origins[0]) * Math.abs(a), uncertaintyOf(origins[1]) * Math.abs(b))
  );
}
