/**
 * The search for a better lay that is going on for a book. Each better lay goes into the book as
 * it comes; every cell that asked the question then answers with it.
 */
import type { Lay, Placement } from "../../../functions/lay.ts";
import type { Asked } from "../../engine/question.ts";
import { isBetter } from "../../lay/answer.ts";
import { isFound, toKeep } from "../../lay/desk.ts";
import { checkLay } from "../../lay/plan.ts";
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
  /** A lay begun by hand, or about pins, that the book has not taken up; it is shown, not kept. */
  readonly apart: Lay | null;
  readonly trouble: string | null;
  readonly ending: Ending | "enough" | null;
}

export interface Wanted {
  readonly asked: Asked;
  /** The cell, as it is called. */
  readonly cell: string;
  readonly seconds: number;
  /** A length of cloth that will do; null to search for the whole time. */
  readonly enough: number | null;
  /** Copies that stay where they lie. */
  readonly pinned: readonly Placement[];
  /** The lay on the table. */
  readonly start: Lay;
}

const IDLE: Hunting = {
  hash: "",
  cell: "",
  running: false,
  progress: 0,
  before: 0,
  now: 0,
  density: 0,
  apart: null,
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
  /** The best lay that is not in the book yet, and the one every cell answers with. */
  #best: Lay | null = null;
  #standing: Lay | null = null;
  #asked: Asked | null = null;
  #seed = 1;
  /** The question for which a cell last had a found lay. */
  readonly #found = new Map<string, string>();
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
  begin({ asked, cell, seconds, enough, pinned, start }: Wanted): void {
    const { question, hash } = asked;
    const standing = this.#store.engine.setting.plan?.(question);
    if (!standing || "refusal" in standing) return;
    this.stop();
    // What was laid by hand is a start only when it is pinned, or better than what the book has.
    const from = pinned.length > 0 || isBetter(question, start, standing) ? start : standing;
    const before = lengthOf(from);
    this.#standing = standing;
    this.#asked = asked;
    if (isFound(question, this.#store.shown.lays)) this.#found.set(cell, hash);
    const apart = from === standing ? null : from;
    this.#tell({ ...IDLE, hash, cell, running: true, before, now: before, density: from.density, apart });
    const wish = {
      question: pinned.length > 0 ? { ...question, pinned } : question,
      start: from,
      milliseconds: seconds * 1000,
      seed: this.#seed,
    };
    // Another search goes other ways.
    this.#seed += 100;
    this.#searcher.search(wish, {
      better: (lay) => {
        // Found about pins, it has to be a lay of the question without them.
        if (pinned.length > 0 && checkLay(question, lay).length > 0) return;
        this.#best = lay;
        this.#timer ??= setTimeout(() => this.#keep(), SELDOM);
        this.#tell({ now: lengthOf(lay), density: lay.density });
        if (enough !== null && lay.missing.length === 0 && lengthOf(lay) <= enough + 1e-9) {
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

  /** Puts away the lay that is shown but not kept, and what was told of the last search. */
  forget(): void {
    this.stop();
    this.#tell(IDLE);
  }

  /** Whether a lay was found here for this cell while it asked another question than now. */
  wasFound(cell: string, hash: string): boolean {
    const found = this.#found.get(cell);
    return found !== undefined && found !== hash;
  }

  #keep(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    const lay = this.#best;
    this.#best = null;
    if (!lay || !this.#asked || !this.#standing) return;
    const { question, hash } = this.#asked;
    if (isBetter(question, lay, this.#standing)) {
      this.#standing = lay;
      this.#found.set(this.#state.cell, hash);
      this.#tell({ apart: null });
      this.#store.keepLay(hash, toKeep(lay));
    } else this.#tell({ apart: lay });
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
