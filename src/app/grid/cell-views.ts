/** What the cells of the page show, remembered until the next revision. */
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { typedAt } from "../../book/shape.ts";
import type { CellView } from "../../engine/view.ts";
import type { Store } from "../../store/store.ts";
import { reasonOf } from "../faults/in-time.ts";

export class CellViews {
  readonly #store: Store;
  readonly #views = new Map<number, CellView>();

  constructor(store: Store) {
    this.#store = store;
  }

  /** Forgets everything: at each revision, and when another page is shown. */
  clear(): void {
    this.#views.clear();
  }

  at(page: number, row: number, column: number): CellView {
    const key = row * 1024 + column;
    let view = this.#views.get(key);
    if (!view) {
      view = this.#read({ page, row, column });
      this.#views.set(key, view);
    }
    return view;
  }

  /** A cell that can't be looked at is an error in its own place; the others are shown. */
  #read(place: Place): CellView {
    const { engine, shown: book } = this.#store;
    try {
      return engine.view(place);
    } catch (fault) {
      const sentence = phrase`this cell can't be shown (${reasonOf(fault)})`;
      return {
        typed: typedAt(book, place.page, place.row, place.column),
        shown: phrase`error`,
        value: null,
        kind: "text",
        origin: null,
        worked: true,
        problem: { is: "error", sentence, from: place },
        name: undefined,
      };
    }
  }
}
