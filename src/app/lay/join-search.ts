/**
 * The search for joins that the cells and the Drawing wait for: one question at a time, in a worker.
 * Its answer is kept for this visit, and the cells that asked are calculated again with it.
 */
import type { JoinQuestion } from "../../../functions/lay.ts";
import { joinsKey, knownJoins, learnJoins } from "../../lay/joins.ts";
import type { Store } from "../../store/store.ts";
import { searchJoinsApart } from "../../worker/join-client.ts";
import { onePerStore, Watched } from "./watched.ts";

export interface JoinSearchState {
  /** The key of the question that is searched for, "" without one. */
  readonly key: string;
  /** Lays tried for it so far. */
  readonly tried: number;
}

const IDLE: JoinSearchState = { key: "", tried: 0 };

export class JoinSearch extends Watched<JoinSearchState> {
  readonly #store: Store;
  readonly #search: typeof searchJoinsApart;
  #stop = (): void => {};
  /** What the maker has asked for in the Drawing. */
  #asked: JoinQuestion | null = null;

  constructor(store: Store, search = searchJoinsApart) {
    super(IDLE);
    this.#store = store;
    this.#search = search;
  }

  /** Watches the book from now on. Returns the function that ends this. */
  watch(): () => void {
    const off = this.#store.subscribe(() => this.#follow());
    this.#follow();
    return () => {
      off();
      this.#stop();
      this.become(IDLE);
    };
  }

  /** Looks for these joins before all others; null when the Drawing no longer asks for any. */
  ask(joins: JoinQuestion | null): void {
    this.#asked = joins;
    this.#follow();
  }

  #waiting(): JoinQuestion[] {
    const cells = this.#store.engine.laid().flatMap(({ joins }) => joins ?? []);
    const all = this.#asked ? [this.#asked, ...cells] : cells;
    return all.filter((one) => "pending" in knownJoins(one));
  }

  /** Continues the search while a cell or the Drawing waits for it, else begins the next one. */
  #follow(): void {
    const [first, ...others] = this.#waiting();
    const isAsked = first !== undefined && first === this.#asked;
    const { key } = this.state();
    if (first && key !== "") {
      const stays = isAsked ? [first] : [first, ...others];
      if (stays.some((one) => joinsKey(one) === key)) return;
    }
    this.#stop();
    if (!first) {
      if (key !== "") this.become(IDLE);
      return;
    }
    const own = joinsKey(first);
    this.#stop = this.#search(first, {
      tried: (tried) => this.become({ key: own, tried }),
      ended: (answer) => {
        learnJoins(first, answer);
        this.become(IDLE);
        const places = this.#store.engine
          .laid()
          .filter(({ joins }) => joins && joinsKey(joins) === own)
          .map(({ place }) => place);
        if (places.length > 0) this.#store.workAgain(places);
        this.#follow();
      },
    });
    this.become({ key: own, tried: 0 });
  }
}

/** The one search for joins of a store. */
export const joinSearchOf = onePerStore((store) => new JoinSearch(store));
