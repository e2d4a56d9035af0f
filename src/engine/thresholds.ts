/**
 * Thresholds: where a watched answer jumps while one typed cell is varied, and from what figure
 * on, as the tape shows it: "from 14 1/8 a third panel is needed". Between two rows of a sweep
 * the interval is halved wherever a straight line does not explain the middle; a smooth answer
 * straightens out after a few halvings, a jump never does.
 */

import { roundTo } from "../../functions/fractions.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "../book/shape.ts";
import { shownApart } from "./apart.ts";
import { numberOf, type QuestionEngine, type Reading } from "./question-engine.ts";
import { type Row, readingText, type Watched } from "./sweep.ts";
import { clean, figureText, type VariedCell } from "./varied-cell.ts";

export interface Jump {
  readonly watched: Watched;
  /** The first figure of the tape (or the first whole number) with the new answer. */
  readonly at: number;
  readonly before: Reading;
  readonly after: Reading;
  readonly sentence: string;
}

/** A jump smaller than this share of all that the answer does in the sweep is not listed. */
const LEAST_SHARE = 0.002;
/** How far a reading between two others may lie off the straight line, as a share of the rise. */
const STRAIGHT = 0.05;
/** Where besides the middle that is tried: a staircase may happen to pass through the middle. */
const ASIDE = 0.382;
/** Halvings below the tape's mark after which what is left of the rise is a jump. */
const BELOW_MARK = 7;
/** An answer that jumps at more places than this has no thresholds worth naming: a laid length, for one. */
const MOST_JUMPS = 12;
/** The same for an answer that stands still between its jumps, as whole panels do. */
const MOST_STEPS = 60;

export interface Thresholds {
  readonly watched: Watched;
  readonly jumps: readonly Jump[];
  /** There are too many to name; `jumps` is empty then. */
  readonly tooMany: boolean;
  /** The answer stands still between its jumps. */
  readonly steps: boolean;
}

const differ = (a: Reading, b: Reading): boolean =>
  "sentence" in a || "sentence" in b ? "sentence" in a !== "sentence" in b : a.value !== b.value;

/**
 * The jumps of one watched cell, in order. The rows are a sweep of one varied cell that
 * has the watched cell at `index`; the engine has the same varied cell and watches this one alone. Differences up to the share
 * `blur` of the answer are not listed: for an answer that is a little uncertain everywhere, as a laid
 * length is. Stops now and then between readings.
 */
export function* thresholds(
  engine: QuestionEngine,
  rows: readonly Row[],
  index: number,
  watched: Watched,
  blur = 0,
): Generator<void, Thresholds, undefined> {
  const cell = engine.varied[0]!;
  const numbers = rows.flatMap(({ readings }) => numberOf(readings[index]) ?? []);
  const range = numbers.length === 0 ? 0 : Math.max(...numbers) - Math.min(...numbers);
  const steps = inSteps(rows, index);
  // What is counted, and what stands still from one whole number to the next, changes by jumps only.
  const counted = watched.kind === "count" || (cell.whole && steps);
  const mark = Math.min(cell.step, ...gapOf(rows));
  const tiny = mark / 2 ** BELOW_MARK;
  const most = counted || steps ? MOST_STEPS : MOST_JUMPS;
  const jumps: Jump[] = [];
  const readAt = (figure: number): Reading => engine.read([figure])[0]!;

  const between = function* (a: number, before: Reading, b: number, after: Reading): Generator<void> {
    if (!differ(before, after) || jumps.length > most) return;
    const rise = riseOf(before, after);
    if (rise !== null && Math.abs(rise) <= LEAST_SHARE * range && !counted) return;
    if (isBlurred(before, after, blur)) return;
    if (cell.whole || b - a <= tiny) {
      const at = cell.whole ? b : markAfter(a, b, mark, (on) => nearer(readAt(on), before, after));
      jumps.push({
        watched,
        at,
        before,
        after,
        sentence: jumpSentence(engine.book, cell, watched, at, before, after, blur > 0),
      });
      return;
    }
    yield;
    const middle = (a + b) / 2;
    const reading = readAt(middle);
    if (rise !== null && !counted) {
      const start = numberOf(before)!;
      const off = (one: Reading, share: number) =>
        Math.abs((numberOf(one) ?? Number.NaN) - start - share * rise);
      const straight = (one: Reading, share: number) => off(one, share) <= STRAIGHT * Math.abs(rise);
      if (straight(reading, 0.5) && straight(readAt(a + ASIDE * (b - a)), ASIDE)) return;
    }
    yield* between(a, before, middle, reading);
    yield* between(middle, reading, b, after);
  };

  for (let i = 1; i < rows.length; i += 1) {
    const [from, to] = [rows[i - 1]!, rows[i]!];
    if (cell.whole && !counted && riseOf(from.readings[index]!, to.readings[index]!) !== null) continue;
    yield* between(from.figures[0]!, from.readings[index]!, to.figures[0]!, to.readings[index]!);
  }
  const tooMany = jumps.length > most;
  return { watched, jumps: tooMany ? [] : jumps, tooMany, steps: counted || steps };
}

/** Whether two answers differ by no more than a share of them. */
function isBlurred(before: Reading, after: Reading, blur: number): boolean {
  const [from, to] = [numberOf(before), numberOf(after)];
  return from !== null && to !== null && Math.abs(to - from) <= blur * Math.max(Math.abs(from), Math.abs(to));
}

/**
 * The jumps of a sweep of the same steps made anew with less uncertain answers: those that stand out
 * of the smaller blur, and in an answer that stands still between its jumps also those that came up
 * elsewhere, to the step of the sweep.
 */
export function clearer(
  engine: Pick<QuestionEngine, "book" | "varied">,
  earlier: Thresholds,
  rows: readonly Row[],
  index: number,
  blur: number,
): Thresholds {
  const { watched } = earlier;
  const cell = engine.varied[0]!;
  const steps = inSteps(rows, index);
  const jumps = rows.slice(1).flatMap((row, i): Jump[] => {
    const [before, after] = [rows[i]!.readings[index]!, row.readings[index]!];
    if (!differ(before, after) || isBlurred(before, after, blur)) return [];
    const [from, to] = [rows[i]!.figures[0]!, row.figures[0]!];
    const known = earlier.jumps.find(({ at }) => at > from + 1e-9 && at <= to + cell.step);
    if (!known && !steps) return [];
    const at = known?.at ?? to;
    return [
      {
        watched,
        at,
        before,
        after,
        sentence: jumpSentence(engine.book, cell, watched, at, before, after, true),
      },
    ];
  });
  return jumps.length > MOST_STEPS ? { ...earlier, jumps: [], tooMany: true } : { ...earlier, steps, jumps };
}

const riseOf = (a: Reading, b: Reading): number | null => {
  const [from, to] = [numberOf(a), numberOf(b)];
  return from === null || to === null ? null : to - from;
};

/** Whether the answers stand still between most steps. */
function inSteps(rows: readonly Row[], index: number): boolean {
  const still = rows
    .slice(1)
    .filter((row, i) => !differ(rows[i]!.readings[index]!, row.readings[index]!)).length;
  return rows.length > 2 && 2 * still >= rows.length - 1;
}

/** The step of a sweep, if it has more than one row. */
const gapOf = (rows: readonly Row[]): number[] =>
  rows.length > 1 ? [clean(rows[1]!.figures[0]! - rows[0]!.figures[0]!)] : [];

/** The first mark at which the new answer holds, for a jump between `a` and `b`, which lie closer than any mark. */
function markAfter(a: number, b: number, mark: number, old: (figure: number) => boolean): number {
  const low = clean(roundTo(b, mark, "down"));
  if (low >= a && !old(low)) return low;
  const high = clean(roundTo(b, mark, "up"));
  return high > low ? high : clean(low + mark);
}

/** Whether a reading is the one before the jump rather than the one after. */
function nearer(reading: Reading, before: Reading, after: Reading): boolean {
  const [toBefore, toAfter] = [riseOf(reading, before), riseOf(reading, after)];
  return toBefore !== null && toAfter !== null
    ? Math.abs(toBefore) < Math.abs(toAfter)
    : !differ(reading, before);
}

const ORDINALS = [
  "",
  phrase`first`,
  phrase`second`,
  phrase`third`,
  phrase`fourth`,
  phrase`fifth`,
  phrase`sixth`,
  phrase`seventh`,
  phrase`eighth`,
  phrase`ninth`,
  phrase`tenth`,
];

function jumpSentence(
  book: Book,
  cell: VariedCell,
  watched: Watched,
  at: number,
  before: Reading,
  after: Reading,
  about: boolean,
): string {
  const from = phrase`from ${cell.label} ${figureText(book, cell.kind, at)}`;
  const thing = /^(\w*[a-z])s$/.exec(watched.label)?.[1]?.replaceAll("_", " ");
  if (watched.kind === "count" && thing && riseOf(before, after) === 1) {
    const ordinal = ORDINALS[(after as { value: number }).value];
    if (ordinal) return phrase`${from} a ${ordinal} ${thing} is needed`;
  }
  if ("sentence" in after) return phrase`${from} ${watched.label} has no answer: ${after.sentence}`;
  if ("sentence" in before) return phrase`${from} ${watched.label} is ${readingText(book, watched, after)}`;
  const [old, now] = [numberOf(before), numberOf(after)];
  if (old === null || now === null)
    return phrase`${from} ${watched.label} changes from “${readingText(book, watched, before)}” to “${readingText(book, watched, after)}”`;
  const [was, is] = shownApart([old, now], watched.kind, book);
  return about
    ? phrase`${from} ${watched.label} is about ${is!}, not about ${was!}`
    : phrase`${from} ${watched.label} is ${is!}, not ${was!}`;
}
