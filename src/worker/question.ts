/**
 * The what-if questions as plain data, and how they are answered off the main thread: on a copy of
 * the book, a little at a time, so that a newer question can end an older one.
 */
import type { Place } from "../book/address.ts";
import type { Book } from "../book/shape.ts";
import type { Aim, OpenSpan } from "../engine/aim.ts";
import { Copy } from "../engine/copy.ts";
import { type Dial, dialAt, isProblem } from "../engine/dial.ts";
import { type Effect, sensitivity } from "../engine/sensitivity.ts";
import { type Solution, solve } from "../engine/solve.ts";
import { type Row, type Span, settingsOf, stepsOf, sweep, type Watched } from "../engine/sweep.ts";
import { type Thresholds, thresholds } from "../engine/thresholds.ts";
import { type Comparison, comparing } from "../engine/trials.ts";
import { layDesk } from "../lay/desk.ts";

export type Question = { readonly book: Book } & (
  | {
      readonly is: "sweep";
      readonly dials: readonly Place[];
      readonly spans: readonly Span[];
      readonly watched: readonly Watched[];
    }
  | {
      readonly is: "solve";
      readonly dials: readonly Place[];
      readonly spans: readonly OpenSpan[];
      readonly make: Watched;
      readonly aim: Aim;
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
  /** Why there is no answer. */
  | { readonly problem: string }
  /** Nothing more to come. */
  | { readonly done: true };

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
    case "sensitivity":
      yield { effects: yield* quietly(sensitivity(question.book, layDesk, question.watched)) };
      break;
    case "compare":
      yield { comparison: yield* quietly(comparing(question.book, layDesk)) };
  }
  yield { done: true };
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

function dialsAt(book: Book, places: readonly Place[]): Dial[] | { problem: string } {
  const dials = places.map((place) => dialAt(book, place));
  return dials.find(isProblem) ?? (dials as Dial[]);
}

function* sweeping(question: Extract<Question, { is: "sweep" }>): Answering {
  const { book, spans, watched } = question;
  const dials = dialsAt(book, question.dials);
  if (isProblem(dials)) return yield dials;
  const lists = dials.map((dial, i) => stepsOf(book, dial, spans[i]!));
  const bad = lists.find(isProblem);
  if (bad) return yield bad;
  const settings = settingsOf(lists as number[][]);
  if (isProblem(settings)) return yield settings;
  const copy = new Copy(
    book,
    layDesk,
    dials,
    watched.map(({ place }) => place),
  );
  const rows: Row[] = [];
  try {
    for (const row of sweep(copy, settings)) {
      rows.push(row);
      yield { rows: [row] };
    }
  } finally {
    copy.destroy();
  }
  if (dials.length > 1) return;
  for (const [i, one] of watched.entries()) {
    const own = new Copy(book, layDesk, dials, [one.place]);
    try {
      yield { thresholds: yield* quietly(thresholds(own, rows, i, one)) };
    } finally {
      own.destroy();
    }
  }
}

function* solving(question: Extract<Question, { is: "solve" }>): Answering {
  const { book, make } = question;
  const dials = dialsAt(book, question.dials);
  if (isProblem(dials)) return yield dials;
  const copy = new Copy(book, layDesk, dials, [make.place]);
  try {
    const found = yield* quietly(solve(copy, question));
    yield isProblem(found) ? found : { solution: found };
  } finally {
    copy.destroy();
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
