/**
 * The search for joins that the cells and the Drawing wait for: one question at a time, in a worker.
 * Its answer is kept for this visit, and the cells that asked are calculated again with it.
 */
import type { JoinQuestion } from "../../../functions/lay.ts";
import { joinsKey, knownJoins, learnJoins } from "../../lay/joins.ts";
import type { Store } from "../../store/store.ts";
import { searchJoinsApart } from "../../worker/join-client.ts";

export interface JoinSearchState {
  /** The key of the question that is searched for, "" without one. */
  readonly key: string;
  /** Lays tried for it so far. */
  readonly tried: number;
}

const IDLE: JoinSearchState = { key: "", tried: 0 };

export class JoinSearch {
  readonly #store: Store;
  readonly #search: typeof searchJoinsApart;
  #state = IDLE;
  #stop = (): void => {};
  /** What the maker has asked for in the Drawing. */
  #asked: JoinQuestion | null = null;
  readonly #listeners = new Set<() => void>();

  constructor(store: Store, search = searchJoinsApart) {
    this.#store = store;
    this.#search = search;
  }

  readonly state = (): JoinSearchState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Looks at the book from now on; returns what ends it. */
  watch(): () => void {
    const off = this.#store.subscribe(() => this.#follow());
    this.#follow();
    return () => {
      off();
      this.#stop();
      this.#tell(IDLE);
    };
  }

  /** Looks for these joins before all others; null when nobody asks in the Drawing any more. */
  ask(joins: JoinQuestion | null): void {
    this.#asked = joins;
    this.#follow();
  }

  #tell(state: JoinSearchState): void {
    this.#state = state;
    for (const listener of [...this.#listeners]) listener();
  }

  #waiting(): JoinQuestion[] {
    const cells = this.#store.engine.laid().flatMap(({ joins }) => joins ?? []);
    const all = this.#asked ? [this.#asked, ...cells] : cells;
    return all.filter((one) => "pending" in knownJoins(one));
  }

  /** Goes on with the search while anybody waits for it, else with the next one. */
  #follow(): void {
    const [first, ...others] = this.#waiting();
    const isAsked = first !== undefined && first === this.#asked;
    const { key } = this.#state;
    if (first && key !== "") {
      const stays = isAsked ? [first] : [first, ...others];
      if (stays.some((one) => joinsKey(one) === key)) return;
    }
    this.#stop();
    if (!first) {
      if (key !== "") this.#tell(IDLE);
      return;
    }
    const own = joinsKey(first);
    this.#stop = this.#search(first, {
      tried: (tried) => this.#tell({ key: own, tried }),
      ended: (answer) => {
        learnJoins(first, answer);
        this.#tell(IDLE);
        const places = this.#store.engine
          .laid()
          .filter(({ joins }) => joins && joinsKey(joins) === own)
          .map(({ place }) => place);
        if (places.length > 0) this.#store.workAgain(places);
        this.#follow();
      },
    });
    this.#tell({ key: own, tried: 0 });
  }
}

const searches = new WeakMap<Store, JoinSearch>();

/** The one search for joins of a store. */
export function joinSearchOf(store: Store): JoinSearch {
  let search = searches.get(store);
  if (!search) {
    search = new JoinSearch(store);
    searches.set(store, search);
  }
  return search;
}
