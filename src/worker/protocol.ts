/** What a lay worker is asked, what it tells, and how it goes about it. All of it is plain data. */
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { Search } from "../lay/plan.ts";

export interface SearchTask {
  readonly question: LayQuestion;
  /** A good lay of the question, to start from. */
  readonly start: Lay;
  /** Whole number; every worker gets its own. */
  readonly seed: number;
  /** How long to search. */
  readonly milliseconds: number;
  /** Instead of a time: rounds of moves, the same on every machine. */
  readonly rounds?: number;
}

export type SearchNews =
  /** A better lay, which the independent checker has passed. */
  | { readonly better: Lay }
  /** Share of the plan spent, 0 to 1. */
  | { readonly progress: number }
  /** Nothing more to come; `best` when no lay can be better. */
  | { readonly done: "time" | "best" }
  /** Why there is nothing to search. */
  | { readonly refusal: string };

/** Between two slices of this length the worker tells how far it is. */
const SLICE_MS = 100;
const SLICE_ROUNDS = 20;

/** Works the task to its end, telling as it goes. Whoever wants it to stop ends the worker. */
export function workTask(task: SearchTask, tell: (news: SearchNews) => void): void {
  const { question, start, seed, milliseconds, rounds } = task;
  const plan = rounds === undefined ? { milliseconds } : { rounds };
  const search = new Search(question, { seed, start, ...plan });
  if (search.refusal !== null) {
    tell({ refusal: search.refusal });
    return;
  }
  const slice = rounds === undefined ? { milliseconds: SLICE_MS } : { rounds: SLICE_ROUNDS };
  let ended = false;
  while (!ended && search.progress < 1) {
    ended = search.run(slice, (better) => {
      if (better !== start) tell({ better });
    });
    tell({ progress: Math.min(1, search.progress) });
  }
  tell({ done: ended ? "best" : "time" });
}
