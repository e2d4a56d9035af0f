/**
 * The search for a better lay that is going on for a book. Each better lay goes into the book as
 * it comes; every cell that asked the question then answers with it.
 */
import type { Lay } from "../../../functions/lay.ts";
import type { Asked } from "../../engine/question.ts";
import { toKeep } from "../../lay/desk.ts";
import type { Store } from "../../store/store.ts";
import { type Ending, LaySearcher } from "../../worker/client.ts";

export interface Hunting {
  /** The hash of the question, "" before the first search. */
  readonly hash: string;
  /** The cell it is for, as it is called. */
  readonly cell: string;
  readonly running: boolean;
  /** Share of the time spent, 0 to 1. */
  readonly progress: number;
  /** Lengths of cloth: before the search, and of the best lay so far. */
  readonly before: number;
  readonly now: number;
  readonly density: number;
  readonly trouble: string | null;
  readonly ending: Ending | "enough" | null;
}

const IDLE: Hunting = {
  hash: "",
  cell: "",
  running: false,
  progress: 0,
  before: 0,
  now: 0,
  density: 0,
  trouble: null,
  ending: null,
};

/** Better lays come fast at first: the book takes one up at most so often, in milliseconds. */
const SELDOM = 300;

const lengthOf = (lay: Lay): number => lay.lengths.reduce((sum, length) => sum + length, 0);

export class Hunt {
  readonly #store: Store;
  readonly #searcher = new LaySearcher();
  #state = IDLE;
  #best: Lay | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #listeners = new Set<() => void>();

  constructor(store: Store) {
    this.#store = store;
  }

  readonly state = (): Hunting => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  #tell(change: Partial<Hunting>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener();
  }

  /** Searches for so many seconds, or until the lay is no longer than `enough`. */
  begin({ question, hash }: Asked, cell: string, seconds: number, enough: number | null): void {
    const start = this.#store.engine.setting.plan?.(question);
    if (!start || "refusal" in start) return;
    this.stop();
    const before = lengthOf(start);
    this.#tell({ ...IDLE, hash, cell, running: true, before, now: before, density: start.density });
    const wish = { question, start, milliseconds: seconds * 1000, seed: 1 };
    this.#searcher.search(wish, {
      better: (lay) => {
        this.#best = lay;
        this.#timer ??= setTimeout(() => this.#keep(), SELDOM);
        this.#tell({ now: lengthOf(lay), density: lay.density });
        if (enough !== null && lengthOf(lay) <= enough + 1e-9) {
          this.stop();
          this.#tell({ ending: "enough" });
        }
      },
      progress: (progress) => this.#tell({ progress }),
      trouble: (trouble) => this.#tell({ trouble }),
      ended: (ending) => {
        this.#keep();
        this.#tell({ running: false, ending });
      },
    });
  }

  stop(): void {
    this.#searcher.stop();
  }

  #keep(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#best) this.#store.keepLay(this.#state.hash, toKeep(this.#best));
    this.#best = null;
  }
}

const hunts = new WeakMap<Store, Hunt>();

/** The one hunt of a store. */
export function huntOf(store: Store): Hunt {
  let hunt = hunts.get(store);
  if (!hunt) {
    hunt = new Hunt(store);
    hunts.set(store, hunt);
  }
  return hunt;
}
