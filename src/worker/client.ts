/**
 * A lay searched for by several workers at once, each with a seed of its own. The better lays
 * of all come in one stream, each better than the one before. One search at a time: a newer
 * question ends the older one.
 */

import type { Lay, LayQuestion } from "../../functions/lay.ts";
import { phrase } from "../../functions/phrase.ts";
import { isBetter } from "../lay/answer.ts";
import type { SearchNews, SearchTask, WorkerOrder } from "./protocol.ts";
import { startWorker } from "./speaking.ts";

export interface Wish {
  readonly question: LayQuestion;
  /** A good lay of the question, to start from; without one the quick lay comes first. */
  readonly start?: Lay | undefined;
  readonly milliseconds: number;
  /** Whole number; the workers' seeds follow from it. */
  readonly seed: number;
}

/** How a search ended: its time is over, no lay can be better, it was stopped, or no worker was left. */
export type Ending = "time" | "best" | "stopped" | "failed";

/** The functions that a search calls with its news. */
export interface Listener {
  better(lay: Lay): void;
  /** Share of the plan spent, 0 to 1. */
  progress(share: number): void;
  /** What went wrong, in a sentence; the best lay so far stands. */
  trouble(sentence: string): void;
  ended(how: Ending): void;
}

/** As much of a Worker as is used. */
export interface LayWorker {
  postMessage(order: WorkerOrder): void;
  terminate(): void;
  onmessage: ((event: { data: SearchNews }) => void) | null;
  onerror: ((event: { message?: string; preventDefault?: () => void }) => void) | null;
  onmessageerror: (() => void) | null;
}

const makeWorker = (): LayWorker =>
  startWorker(new URL("./worker.ts", import.meta.url)) as unknown as LayWorker;

/** Workers for a machine of so many cores: one core is left for the page. */
export const workersFor = (cores: number | undefined): number => Math.max(1, (cores ?? 2) - 1);

/** A worker that sends no news for this long is taken for dead, because some browsers end a worker without any message. */
const SILENCE_MS = 30_000;

interface Running {
  readonly listener: Listener;
  readonly left: Map<LayWorker, { progress: number; silence: ReturnType<typeof setTimeout> }>;
  best: Lay | undefined;
}

export class LaySearcher {
  #running: Running | null = null;
  #resting = false;

  constructor(
    private readonly count = workersFor(globalThis.navigator?.hardwareConcurrency),
    private readonly make: () => LayWorker = makeWorker,
  ) {}

  get isSearching(): boolean {
    return this.#running !== null;
  }

  /** Begins a search; the one that is going on is stopped. */
  search({ question, start, milliseconds, seed }: Wish, listener: Listener): void {
    this.stop();
    const running: Running = { listener, left: new Map(), best: start };
    this.#running = running;
    this.#resting = false;
    // The quick lay alone is the same whoever makes it.
    const count = milliseconds > 0 ? this.count : 1;
    for (let i = 0; i < count && this.#running === running; i += 1) {
      const task: SearchTask = { question, start, seed: seed + i, milliseconds };
      try {
        const worker = this.make();
        running.left.set(worker, { progress: 0, silence: this.#watch(running, worker) });
        worker.onmessage = ({ data }) => this.#hear(running, worker, question, data);
        worker.onerror = (event) => {
          event.preventDefault?.();
          this.#lose(running, worker, event.message || phrase`it gave no reason`);
        };
        worker.onmessageerror = () => this.#lose(running, worker, phrase`its message could not be read`);
        worker.postMessage(task);
      } catch (reason) {
        this.#complain(running, phrase`it could not be started (${(reason as Error).message})`);
      }
    }
    if (running.left.size === 0) this.#end(running, "failed");
  }

  /** Lets the search rest, or go on. The lays found so far stay, and a rest takes no time from the search. */
  rest(resting: boolean): void {
    const running = this.#running;
    if (!running || resting === this.#resting) return;
    this.#resting = resting;
    for (const [worker, state] of running.left) {
      clearTimeout(state.silence);
      if (!resting) state.silence = this.#watch(running, worker);
      worker.postMessage({ rest: resting });
    }
  }

  /** Ends the search at once. The lays found so far stay. */
  stop(): void {
    if (this.#running) this.#end(this.#running, "stopped");
  }

  #hear(running: Running, worker: LayWorker, question: LayQuestion, news: SearchNews): void {
    const state = running.left.get(worker);
    if (this.#running !== running || !state) return;
    clearTimeout(state.silence);
    if (!this.#resting) state.silence = this.#watch(running, worker);
    if ("better" in news) {
      if (running.best && !isBetter(question, news.better, running.best)) return;
      running.best = news.better;
      running.listener.better(news.better);
    } else if ("progress" in news) {
      state.progress = news.progress;
      running.listener.progress(Math.min(...[...running.left.values()].map(({ progress }) => progress)));
    } else if ("refusal" in news) {
      running.listener.trouble(news.refusal);
      this.#end(running, "failed");
    } else if (news.done === "best") {
      this.#end(running, "best");
    } else {
      this.#dismiss(running, worker);
      if (running.left.size === 0) this.#end(running, "time");
    }
  }

  #watch(running: Running, worker: LayWorker) {
    return setTimeout(() => this.#lose(running, worker, phrase`it fell silent`), SILENCE_MS);
  }

  #lose(running: Running, worker: LayWorker, why: string): void {
    if (!running.left.has(worker)) return;
    this.#dismiss(running, worker);
    this.#complain(running, why);
    if (running.left.size === 0) this.#end(running, "failed");
  }

  #complain({ listener, left }: Running, why: string): void {
    const rest = left.size > 0 ? phrase`the others search on` : phrase`the best lay so far is kept`;
    listener.trouble(phrase`a search worker stopped: ${why}; ${rest}`);
  }

  #dismiss({ left }: Running, worker: LayWorker): void {
    clearTimeout(left.get(worker)?.silence);
    left.delete(worker);
    worker.onmessage = worker.onerror = worker.onmessageerror = null;
    worker.terminate();
  }

  #end(running: Running, how: Ending): void {
    if (this.#running !== running) return;
    this.#running = null;
    for (const worker of [...running.left.keys()]) this.#dismiss(running, worker);
    running.listener.ended(how);
  }
}
