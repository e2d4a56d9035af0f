/**
 * The search for a better lay that the maker has asked for. Each better lay goes into the book as
 * it comes; every cell that asked the question then answers with it.
 */
import type { Lay, Placement } from "../../../functions/lay.ts";
import type { Asked } from "../../engine/lays-asked.ts";
import { isBetter } from "../../lay/answer.ts";
import { checkLay } from "../../lay/plan.ts";
import type { Store } from "../../store/store.ts";
import { type Ending, LaySearcher } from "../../worker/client.ts";
import { Taking } from "./taking.ts";
import { onePerStore, Watched } from "./watched.ts";

export interface Session {
  /** The hash of the question, "" before the first search. */
  readonly hash: string;
  /** The cell it is for, by its name or address. */
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
  /** The cell, by its name or address. */
  readonly cell: string;
  readonly seconds: number;
  /** A length of cloth that will do; null to search for the whole time. */
  readonly enough: number | null;
  /** Copies that stay where they lie. */
  readonly pinned: readonly Placement[];
  /** The lay on the table. */
  readonly start: Lay;
}

const IDLE: Session = {
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

/** Better lays come fast at first: the book takes one up at most this often, in milliseconds. */
const SELDOM = 300;

const lengthOf = (lay: Lay): number => lay.lengths.reduce((sum, length) => sum + length, 0);

export class SearchSession extends Watched<Session> {
  readonly #store: Store;
  readonly #searcher = new LaySearcher();
  #seed = 1;

  constructor(store: Store) {
    super(IDLE);
    this.#store = store;
  }

  #change(change: Partial<Session>): void {
    this.become({ ...this.state(), ...change });
  }

  /** Searches for this many seconds, or until the lay is no longer than `enough`. */
  begin({ asked, cell, seconds, enough, pinned, start }: Wanted): void {
    const { question, hash } = asked;
    const standing = this.#store.engine.setting.plan?.(question);
    if (!standing || "refusal" in standing) return;
    this.stop();
    // What was laid by hand is a start only when it is pinned, or better than what the book has.
    const from = pinned.length > 0 || isBetter(question, start, standing) ? start : standing;
    const before = lengthOf(from);
    const taking = new Taking(this.#store, asked, standing, SELDOM);
    const apart = from === standing ? null : from;
    this.#change({ ...IDLE, hash, cell, running: true, before, now: before, density: from.density, apart });
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
        const taken = isBetter(question, lay, taking.standing!);
        if (taken) taking.better(lay);
        this.#change({ now: lengthOf(lay), density: lay.density, apart: taken ? null : lay });
        if (enough !== null && lay.missing.length === 0 && lengthOf(lay) <= enough + 1e-9) {
          this.stop();
          this.#change({ ending: "enough" });
        }
      },
      progress: (progress) => {
        taking.spent(progress * seconds);
        this.#change({ progress });
      },
      trouble: (trouble) => this.#change({ trouble }),
      ended: (ending) => {
        // A search about pins says nothing of lays that have them elsewhere.
        if (pinned.length > 0) taking.take();
        else taking.end(ending === "best");
        this.#change({ running: false, ending });
      },
    });
  }

  stop(): void {
    this.#searcher.stop();
  }

  /** Dismisses the lay that is shown but not kept, and what was said of the last search. */
  forget(): void {
    this.stop();
    this.#change(IDLE);
  }
}

/** The one search session of a store. */
export const sessionOf = onePerStore((store) => new SearchSession(store));
