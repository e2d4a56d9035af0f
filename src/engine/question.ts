/**
 * The what-if questions as plain data, and their answers: what the page's worker and the verbs of
 * the command line ask. A question is answered on an engine of its own, a little at a time, so that
 * the answer can be shown as it grows and a newer question can end an older one.
 */
import type { LayOrigin } from "../../functions/lay.ts";
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { BeginAhead } from "./ahead.ts";
import type { EqualLays } from "./equal-lays.ts";
import { leastSearchedOf, uncertaintyOf } from "./laid.ts";
import { refinedSolutions } from "./near-answer.ts";
import { type Help, QuestionEngine } from "./question-engine.ts";
import { type Effect, sensitivity } from "./sensitivity.ts";
import { type Solution, solve } from "./solve.ts";
import { type Row, type Span, settingsOf, stepsOf, sweep, type Watched } from "./sweep.ts";
import type { OpenSpan, Target } from "./target.ts";
import { clearer, type Thresholds, thresholds } from "./thresholds.ts";
import { type Comparison, comparing } from "./trials.ts";
import { isProblem, type Problem, type VariedCell, variedCellAt } from "./varied-cell.ts";

export type Question = {
  readonly book: Book;
  /** After the first answer, by quick lays: how long each lay is searched for, in seconds, round by round. */
  readonly rounds?: readonly number[];
  /** With more lays than this there are no rounds. */
  readonly mostLays?: number;
} & (
  | {
      readonly is: "sweep";
      readonly varied: readonly Place[];
      readonly spans: readonly Span[];
      readonly watched: readonly Watched[];
      /** Where the watched answers jump is not looked for. */
      readonly withoutThresholds?: boolean;
    }
  | {
      readonly is: "solve";
      readonly varied: readonly Place[];
      readonly spans: readonly OpenSpan[];
      readonly make: Watched;
      readonly aim: Target;
      readonly least: boolean;
    }
  | { readonly is: "sensitivity"; readonly watched: Watched }
  | { readonly is: "compare"; readonly also?: readonly Place[] }
);

export type AnswerNews =
  | { readonly rows: readonly Row[] }
  | { readonly thresholds: Thresholds }
  | { readonly solution: Solution }
  | { readonly effects: readonly Effect[] }
  | { readonly comparison: Comparison }
  /** Nothing new, but the work goes on. */
  | { readonly atWork: true }
  /** The sweep made anew, with longer searches. */
  | { readonly round: { readonly rows: readonly Row[]; readonly thresholds: readonly Thresholds[] } }
  /** The answer so far is whole; how the least searched of its lays was found, null without lays. */
  | { readonly settled: true; readonly laid: LayOrigin | null }
  /** Why there is no answer. */
  | Problem
  /** Nothing more to come. */
  | { readonly done: true };

/** What has been heard of an answer. */
export interface Answer {
  readonly rows: readonly Row[];
  readonly thresholds: readonly Thresholds[];
  readonly solution: Solution | null;
  readonly effects: readonly Effect[] | null;
  readonly comparison: Comparison | null;
  readonly problem: string | null;
  /** True until the first answer is whole. */
  readonly busy: boolean;
  /** How the least searched lay of the answer was found; null where nothing is laid. */
  readonly laid: LayOrigin | null;
  /** True while longer searches go on, after the first answer. */
  readonly refining: boolean;
  /** How many pieces of news of it have come. */
  readonly newsCount: number;
}

export const NOTHING_HEARD: Answer = {
  rows: [], thresholds: [], solution: null, effects: null, comparison: null, problem: null, busy: true, laid: null, refining: false, newsCount: 0,
}; // biome-ignore format: a list

/** The answer with one piece of news added. */
export function heard(before: Answer, news: AnswerNews): Answer {
  const answer = { ...before, newsCount: before.newsCount + 1 };
  if ("atWork" in news) return answer;
  if ("rows" in news) return { ...answer, rows: [...answer.rows, ...news.rows] };
  if ("thresholds" in news) return { ...answer, thresholds: [...answer.thresholds, news.thresholds] };
  if ("settled" in news) return { ...answer, busy: false, laid: news.laid, refining: true };
  if ("round" in news) return { ...answer, ...news.round };
  if ("done" in news) return { ...answer, busy: false, refining: false };
  return { ...answer, ...news };
}

/** The whole answer at once, when nobody needs to see it grow. */
export function answerAtOnce(question: Question, makeLays: () => EqualLays): Answer {
  let answer = NOTHING_HEARD;
  for (const news of answering(question, makeLays)) if (news) answer = heard(answer, news);
  return answer;
}

type Answering = Generator<AnswerNews | undefined, void, undefined>;
type Asked<Is extends Question["is"]> = Extract<Question, { is: Is }>;

/** The answer bit by bit; undefined where there is nothing to tell yet. With `beginAhead`, other threads work settings ahead; the answer is the same. */
export function* answering(
  question: Question,
  makeLays: () => EqualLays,
  beginAhead: BeginAhead = () => null,
): Answering {
  switch (question.is) {
    case "sweep":
      yield* sweeping(question, makeLays(), beginAhead);
      break;
    case "solve":
      yield* solving(question, makeLays, beginAhead);
      break;
    case "sensitivity": {
      const lays = makeLays();
      yield* inRounds(question, lays, function* () {
        return { effects: yield* quietly(sensitivity(question.book, lays.desk, question.watched)) };
      });
      break;
    }
    case "compare": {
      const lays = makeLays();
      yield* inRounds(question, lays, function* () {
        return { comparison: yield* quietly(comparing(question.book, lays.desk, question.also)) };
      });
    }
  }
  yield { done: true };
}

const settled = ({ lays }: EqualLays): AnswerNews => ({ settled: true, laid: leastSearchedOf(lays) });

/** The efforts that come after the quick lays; none where nothing is laid. */
const roundsFor = ({ rounds = [], mostLays = Infinity }: Question, { lays }: EqualLays) =>
  lays.length > 0 && lays.length <= mostLays ? rounds : [];

/** An answer by quick lays, and the same answer after each round. */
function* inRounds(
  question: Question,
  lays: EqualLays,
  work: () => Generator<undefined, AnswerNews>,
): Answering {
  yield yield* work();
  yield settled(lays);
  for (const seconds of roundsFor(question, lays)) {
    yield* lays.round(seconds);
    yield yield* work();
    yield settled(lays);
  }
}

function* quietly<T>(work: Generator<unknown, T, undefined>): Generator<undefined, T, undefined> {
  try {
    for (;;) {
      const { done, value } = work.next();
      if (done) return value;
      yield undefined;
    }
  } finally {
    work.return?.(undefined as T);
  }
}

function variedCellsAt(book: Book, places: readonly Place[]): VariedCell[] | Problem {
  const varied = places.map((place) => variedCellAt(book, place));
  return varied.find(isProblem) ?? (varied as VariedCell[]);
}

/** The help of other threads with a question, where there is any. */
function helpWith(beginAhead: BeginAhead, question: Asked<"sweep" | "solve">, lays: EqualLays): Help | null {
  const { book, varied } = question;
  const watched = question.is === "sweep" ? question.watched : [question.make];
  const ahead = beginAhead({ book, varied, watched: watched.map(({ place }) => place) });
  return ahead && { ahead, agrees: lays.agrees };
}

function* sweeping(question: Asked<"sweep">, lays: EqualLays, beginAhead: BeginAhead): Answering {
  const { book, spans, watched } = question;
  const varied = variedCellsAt(book, question.varied);
  if (isProblem(varied)) return yield varied;
  const lists = varied.map((cell, i) => stepsOf(book, cell, spans[i]!));
  const bad = lists.find(isProblem);
  if (bad) return yield bad;
  const settings = settingsOf(lists as number[][]);
  if (isProblem(settings)) return yield settings;
  const swept = function* (help: Help | null): Generator<Row, Row[]> {
    const places = watched.map(({ place }) => place);
    const engine = new QuestionEngine(book, lays.desk, varied, places, help);
    const rows: Row[] = [];
    try {
      for (const row of sweep(engine, settings)) {
        rows.push(row);
        yield row;
      }
    } finally {
      engine.destroy();
    }
    return rows;
  };
  const sweeps = swept(helpWith(beginAhead, question, lays));
  let step = sweeps.next();
  for (; !step.done; step = sweeps.next()) yield { rows: [step.value] };
  const rows = step.value;
  const found: { readonly thresholds: Thresholds; readonly laid: boolean }[] = [];
  const jumping = varied.length > 1 || question.withoutThresholds ? [] : [...watched.entries()];
  for (const [i, one] of jumping) {
    const engine = new QuestionEngine(book, lays.peek, varied, [one.place]);
    try {
      engine.now();
      const laid = engine.lays;
      const blur = laid ? uncertaintyOf({ by: "quick" }) : 0;
      const jumps = yield* quietly(thresholds(engine, rows, i, one, blur));
      found.push({ thresholds: jumps, laid });
      yield { thresholds: jumps };
    } finally {
      engine.destroy();
    }
  }
  yield settled(lays);
  for (const seconds of roundsFor(question, lays)) {
    yield* lays.round(seconds);
    const anew = yield* quietly(swept(null));
    const blur = uncertaintyOf(leastSearchedOf(lays.lays));
    const clear = found.map((one, i) =>
      one.laid ? clearer({ book, varied }, one.thresholds, anew, i, blur) : one.thresholds,
    );
    yield { round: { rows: anew, thresholds: clear } };
    yield settled(lays);
  }
}

function* solving(question: Asked<"solve">, makeLays: () => EqualLays, beginAhead: BeginAhead): Answering {
  const { book, make, rounds = [] } = question;
  const varied = variedCellsAt(book, question.varied);
  if (isProblem(varied)) return yield varied;
  const lays = makeLays();
  const help = helpWith(beginAhead, question, lays);
  const engine = new QuestionEngine(book, lays.desk, varied, [make.place], help);
  let first: Solution | Problem;
  try {
    first = yield* quietly(solve(engine, question));
  } finally {
    engine.destroy();
  }
  if (isProblem(first)) return yield first;
  yield { solution: first };
  yield settled(lays);
  if (rounds.length === 0 || lays.lays.length === 0) return;
  const near = makeLays();
  for (const solution of refinedSolutions({ book, varied, request: question }, first, near, rounds)) {
    yield solution && { solution };
    if (solution) yield settled(near);
  }
}
