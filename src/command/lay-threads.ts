/** Runs the search on threads with a seed each and keeps the best lay of all. */

import { existsSync } from "node:fs";
import { Worker } from "node:worker_threads";
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import { isBetter } from "../lay/answer.ts";
import { quickLayUntil } from "../lay/plan.ts";
import { Search } from "../lay/search.ts";

export interface Wish {
  readonly seconds: number;
  readonly seed: number;
  /** 0 searches in this very thread. */
  readonly threads: number;
  /** When the work began, by performance.now(). */
  readonly began: number;
  /** Called with a sentence about what went wrong on the way without stopping the search. */
  readonly complain: (text: string) => void;
}

/** What a thread is given, and what it posts. */
export interface ThreadTask {
  readonly question: LayQuestion;
  readonly start: Lay;
  readonly seed: number;
  readonly milliseconds: number;
}
export type ThreadNews = { readonly better: Lay } | { readonly done: true };

/** How long the first lay may take when no time is given for a search, in milliseconds. */
const QUICK_MS = 2000;

/** How long one slice of the search runs before it listens for an interrupt. */
export const SLICE_MS = 40;

/** The best lay found when the time is over, or the reason why no lay was found. Ctrl-C ends it early with the best so far. */
export async function searchOnThreads(
  question: LayQuestion,
  wish: Wish,
): Promise<Lay | { readonly refusal: string }> {
  // At most half the time goes into the lay that is there first; a search without time has two seconds for it.
  const share = wish.seconds > 0 ? wish.seconds * 500 : QUICK_MS;
  const first = quickLayUntil(question, () => performance.now() - wish.began > share);
  if ("refusal" in first) return first;
  const interrupt = new AbortController();
  const stop = () => interrupt.abort();
  process.once("SIGINT", stop);
  try {
    if (wish.seconds === 0) return first;
    return wish.threads === 0
      ? await searchHere(question, first, wish, interrupt.signal)
      : await searchThere(question, first, wish, interrupt.signal);
  } finally {
    process.removeListener("SIGINT", stop);
  }
}

const timeLeft = (wish: Wish) => wish.seconds * 1000 - (performance.now() - wish.began);

async function searchHere(question: LayQuestion, start: Lay, wish: Wish, signal: AbortSignal): Promise<Lay> {
  const search = new Search(question, { seed: wish.seed, milliseconds: timeLeft(wish), start });
  while (!signal.aborted && timeLeft(wish) > 0) {
    if (search.run({ milliseconds: Math.min(SLICE_MS, timeLeft(wish)) })) break;
    await new Promise((resolve) => setImmediate(resolve));
  }
  return search.best ?? start;
}

/** The thread's file lies beside this one, or one folder up when this one was built into a chunk. */
function threadFile(): URL {
  const beside = new URL("./search-thread.js", import.meta.url);
  return existsSync(beside) ? beside : new URL("../search-thread.js", import.meta.url);
}

function searchThere(question: LayQuestion, start: Lay, wish: Wish, signal: AbortSignal): Promise<Lay> {
  return new Promise((resolve) => {
    let best = start;
    let running = wish.threads;
    const workers = Array.from({ length: wish.threads }, (_, k) => {
      const workerData: ThreadTask = { question, start, seed: wish.seed + k, milliseconds: timeLeft(wish) };
      return new Worker(threadFile(), { workerData });
    });
    const end = () => {
      clearTimeout(timer);
      signal.removeEventListener("abort", end);
      for (const worker of workers) worker.removeAllListeners("exit").terminate();
      resolve(best);
    };
    const oneLess = () => {
      if (--running === 0) end();
    };
    const timer = setTimeout(end, Math.max(0, timeLeft(wish)));
    signal.addEventListener("abort", end);
    for (const worker of workers) {
      let done = false;
      worker.on("message", (news: ThreadNews) => {
        if ("done" in news) done = true;
        else if (isBetter(question, news.better, best)) best = news.better;
      });
      worker.on("error", (error) =>
        wish.complain(phrase`a search thread stopped: ${error.message}; the best lay so far is kept`),
      );
      worker.on("exit", (code) => {
        if (!done && code === 0)
          wish.complain(phrase`a search thread ended early; the best lay so far is kept`);
        oneLess();
      });
    }
  });
}
