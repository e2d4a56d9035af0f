/** The orders to a lay worker, the news it sends back, and how it works. Orders and news are plain data. */
import { searchJoins } from "../../functions/cutting/piecing.ts";
import type { JoinAnswer, JoinQuestion, Lay, LayQuestion } from "../../functions/lay.ts";
import { quickAnswer } from "../lay/desk.ts";
import type { Answer } from "../lay/memory.ts";
import { quickLay } from "../lay/plan.ts";
import { Search } from "../lay/search.ts";

export interface SearchTask {
  readonly question: LayQuestion;
  /** A good lay of the question, to start from; without one the worker begins with the quick lay and sends it. */
  readonly start?: Lay | undefined;
  /** Whole number; every worker gets its own. */
  readonly seed: number;
  /** How long to search; 0 for the quick lay only. */
  readonly milliseconds: number;
  /** Instead of a time: rounds of moves, the same on every machine. */
  readonly rounds?: number;
}

/** Looking for joins with which the pieces fit the cloth in stock. */
export interface JoinTask {
  readonly joins: JoinQuestion;
}

/** Making the quick lay of a question, which has no parts to rest between. */
export interface QuickTask {
  readonly quick: LayQuestion;
}

export interface QuickNews {
  readonly laid: Answer;
}

/** A task, or whether the worker rests. Whoever wants the task to end ends the worker. */
export type WorkerOrder = SearchTask | { readonly rest: boolean };

export type JoinNews =
  /** How many lays were tried so far. */
  { readonly tried: number } | { readonly joined: JoinAnswer };

export type SearchNews =
  /** A better lay, which the independent checker has passed. */
  | { readonly better: Lay }
  /** Share of the plan spent, 0 to 1. */
  | { readonly progress: number }
  /** Nothing more to come; `best` when no lay can be better. */
  | { readonly done: "time" | "best" }
  /** Why there is nothing to search. */
  | { readonly refusal: string };

/** Between two slices of this length the worker sends its progress and reads new orders. */
const SLICE_MS = 60;
const SLICE_ROUNDS = 20;

/** Works the task to its end, a slice at a time, and sends news after each slice. */
export function* workTask(task: SearchTask, tell: (news: SearchNews) => void): Generator<void, void> {
  const { question, start, seed, milliseconds, rounds } = task;
  const plan = rounds === undefined ? { milliseconds: Math.max(1, milliseconds) } : { rounds };
  const search = new Search(question, { seed, ...(start && { start }), ...plan });
  if (search.refusal !== null) {
    tell({ refusal: search.refusal });
    return;
  }
  if (!start) tell({ better: search.best! });
  const slice = rounds === undefined ? { milliseconds: SLICE_MS } : { rounds: SLICE_ROUNDS };
  const first = start ?? search.best;
  let ended = false;
  while (!ended && milliseconds > 0 && search.progress < 1) {
    ended = search.run(slice, (better) => {
      if (better !== first) tell({ better });
    });
    tell({ progress: Math.min(1, search.progress) });
    yield;
  }
  tell({ done: ended ? "best" : "time" });
}

/** Looks for joins, a lay at a time, and sends news after each lay. */
export function* workJoins({ joins }: JoinTask, tell: (news: JoinNews) => void): Generator<void, void> {
  const search = searchJoins(joins, quickLay);
  for (;;) {
    const { done, value } = search.next();
    if (done) return tell({ joined: value });
    tell({ tried: value });
    yield;
  }
}

/** Does one task at a time, and rests while the last order says so. `turn` lets waiting messages arrive. */
export class LayWork {
  #resting = false;
  #wake: () => void = () => {};

  constructor(
    private readonly tell: (news: SearchNews | JoinNews | QuickNews) => void,
    private readonly turn: () => Promise<void>,
  ) {}

  async hear(order: WorkerOrder | JoinTask | QuickTask): Promise<void> {
    if ("quick" in order) return this.tell({ laid: quickAnswer(order.quick) });
    if ("rest" in order) {
      this.#resting = order.rest;
      this.#wake();
      return;
    }
    const steps = "joins" in order ? workJoins(order, this.tell) : workTask(order, this.tell);
    for (const _ of steps) {
      await this.turn();
      while (this.#resting) await new Promise<void>((wake) => (this.#wake = wake));
    }
  }
}
