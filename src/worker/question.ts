/**
 * The what-if questions as plain data, and how they are answered off the main thread: on an engine of
 * its own, a little at a time, so that a newer question can end an older one.
 */
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import { uncertaintyOf } from "../engine/laid.ts";
import { QuestionEngine } from "../engine/question-engine.ts";
import { type Effect, sensitivity } from "../engine/sensitivity.ts";
import { type Solution, solve } from "../engine/solve.ts";
import { type Row, type Span, settingsOf, stepsOf, sweep, type Watched } from "../engine/sweep.ts";
import type { OpenSpan, Target } from "../engine/target.ts";
import { clearer, type Thresholds, thresholds } from "../engine/thresholds.ts";
import { type Comparison, comparing } from "../engine/trials.ts";
import { isProblem, type VariedCell, variedCellAt } from "../engine/varied-cell.ts";
import { Effort } from "../lay/effort.ts";

export type Question = {
  readonly book: Book;
  /** Whether lays are searched for longer, round by round, after the first answer. */
  readonly refine?: boolean;
} & (
  | {
      readonly is: "sweep";
      readonly varied: readonly Place[];
      readonly spans: readonly Span[];
      readonly watched: readonly Watched[];
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
  | { readonly is: "compare" }
);

export type QuestionNews =
  | { readonly rows: readonly Row[] }
  | { readonly thresholds: Thresholds }
  | { readonly solution: Solution }
  | { readonly effects: readonly Effect[] }
  | { readonly comparison: Comparison }
  /** The first answer is whole; for lays the seconds that each was searched for, null without lays. */
  | { readonly settled: true; readonly seconds: number | null }
  /** The sweep made anew, with longer searches. */
  | { readonly round: Round }
  /** Why there is no answer. */
  | { readonly problem: string }
  /** Nothing more to come. */
  | { readonly done: true };

/** Steps whose lays were all searched for this many seconds. */
export interface Round {
  readonly seconds: number;
  readonly rows: readonly Row[];
  readonly thresholds: readonly Thresholds[];
}

type Answering = Generator<QuestionNews | undefined, void, undefined>;

/** The answer bit by bit; undefined where there is nothing to tell yet. */
export function* answer(question: Question): Answering {
  switch (question.is) {
    case "sweep":
      yield* sweeping(question);
      break;
    case "solve":
      yield* solving(question);
      break;
    case "sensitivity": {
      const effort = new Effort();
      yield { effects: yield* quietly(sensitivity(question.book, effort.desk, question.watched)) };
      yield settled(effort);
      break;
    }
    case "compare":
      yield* comparisons(question);
  }
  yield { done: true };
}

const settled = (effort: Effort): QuestionNews => ({
  settled: true,
  seconds: effort.size > 0 ? effort.seconds : null,
});

/** How long each lay is searched for, in seconds, round by round, and the most lays that are. */
const ROUNDS = [0.2, 1, 4];
const MOST_REFINED = 120;

/** The efforts that come after the quick lays; none where nothing is laid. */
const roundsFor = ({ refine }: Question, { size }: Effort): readonly number[] =>
  refine && size > 0 && size <= MOST_REFINED ? ROUNDS : [];

function* comparisons(question: Extract<Question, { is: "compare" }>): Answering {
  const effort = new Effort();
  const book = question.book;
  yield { comparison: yield* quietly(comparing(book, effort.desk)) };
  yield settled(effort);
  for (const seconds of roundsFor(question, effort)) {
    yield* effort.round(seconds);
    yield { comparison: yield* quietly(comparing(book, effort.desk)) };
    yield settled(effort);
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

function variedAt(book: Book, places: readonly Place[]): VariedCell[] | { problem: string } {
  const varied = places.map((place) => variedCellAt(book, place));
  return varied.find(isProblem) ?? (varied as VariedCell[]);
}

function* sweeping(question: Extract<Question, { is: "sweep" }>): Answering {
  const { book, spans, watched } = question;
  const varied = variedAt(book, question.varied);
  if (isProblem(varied)) return yield varied;
  const lists = varied.map((cell, i) => stepsOf(book, cell, spans[i]!));
  const bad = lists.find(isProblem);
  if (bad) return yield bad;
  const settings = settingsOf(lists as number[][]);
  if (isProblem(settings)) return yield settings;
  const effort = new Effort();
  const places = watched.map(({ place }) => place);
  const swept = function* (): Generator<Row, Row[]> {
    const engine = new QuestionEngine(book, effort.desk, varied, places);
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
  const sweeps = swept();
  let step = sweeps.next();
  for (; !step.done; step = sweeps.next()) yield { rows: [step.value] };
  const rows = step.value;
  const found: { readonly thresholds: Thresholds; readonly laid: boolean }[] = [];
  for (const [i, one] of varied.length > 1 ? [] : [...watched.entries()]) {
    const own = new QuestionEngine(book, effort.peek, varied, [one.place]);
    try {
      own.now();
      const laid = own.lays;
      const blur = laid ? uncertaintyOf({ by: "quick" }) : 0;
      const jumps = yield* quietly(thresholds(own, rows, i, one, blur));
      found.push({ thresholds: jumps, laid });
      yield { thresholds: jumps };
    } finally {
      own.destroy();
    }
  }
  yield settled(effort);
  for (const seconds of roundsFor(question, effort)) {
    yield* effort.round(seconds);
    const anew = yield* quietly(swept());
    const blur = uncertaintyOf({ by: "search", seconds });
    const clear = found.map((one, i) =>
      one.laid ? clearer({ book, varied }, one.thresholds, anew, i, blur) : one.thresholds,
    );
    yield { round: { seconds, rows: anew, thresholds: clear } };
  }
}

function* solving(question: Extract<Question, { is: "solve" }>): Answering {
  const { book, make } = question;
  const varied = variedAt(book, question.varied);
  if (isProblem(varied)) return yield varied;
  const effort = new Effort();
  const engine = new QuestionEngine(book, effort.desk, varied, [make.place]);
  try {
    const found = yield* quietly(solve(engine, question));
    yield isProblem(found) ? found : { solution: found };
    yield settled(effort);
  } finally {
    engine.destroy();
  }
}

/** How long a slice of work is, in milliseconds, before newer questions are listened for. */
const SLICE_MS = 15;

/** Answers one question at a time: a newer one ends the older. `pause` lets what waits come in. */
export class Answerer {
  #id = 0;

  constructor(
    private readonly tell: (id: number, news: QuestionNews) => void,
    private readonly pause: () => Promise<void>,
  ) {}

  async ask(id: number, question: Question): Promise<void> {
    this.#id = id;
    const work = answer(question);
    try {
      for (;;) {
        const until = performance.now() + SLICE_MS;
        const rows: Row[] = [];
        let ended = false;
        while (!ended && performance.now() < until) {
          const { done, value } = work.next();
          ended = done === true;
          if (value && "rows" in value) rows.push(...value.rows);
          else if (value) {
            this.#flush(id, rows);
            this.tell(id, value);
          }
        }
        this.#flush(id, rows);
        if (ended) return;
        await this.pause();
        if (this.#id !== id) return;
      }
    } catch (reason) {
      this.tell(id, { problem: `this question could not be worked (${(reason as Error).message})` });
      this.tell(id, { done: true });
    } finally {
      work.return();
    }
  }

  /** Ends what is being worked. */
  stop(): void {
    this.#id = 0;
  }

  #flush(id: number, rows: Row[]): void {
    if (rows.length > 0) this.tell(id, { rows: rows.splice(0) });
  }
}
