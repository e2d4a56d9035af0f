/** What the searches for lays and for joins have in common: a state that the page follows, and one search for each store. */
import type { Store } from "../../store/store.ts";

/** A state with listeners, in the form that useSyncExternalStore takes. */
export class Watched<State> {
  #state: State;
  readonly #listeners = new Set<() => void>();

  constructor(state: State) {
    this.#state = state;
  }

  readonly state = (): State => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  protected become(state: State): void {
    this.#state = state;
    for (const listener of [...this.#listeners]) listener();
  }
}

/** A function that makes an object for each store the first time it is asked for, and gives the same one later. */
export function onePerStore<Made>(make: (store: Store) => Made): (store: Store) => Made {
  const made = new WeakMap<Store, { readonly it: Made }>();
  return (store) => {
    const known = made.get(store) ?? { it: make(store) };
    made.set(store, known);
    return known.it;
  };
}
