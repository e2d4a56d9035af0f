/** Sees each step of the open book, and hands what may be worth keeping to the part that keeps versions. */
import type { Book } from "../../../book/shape.ts";
import type { Store } from "../../../store/store.ts";

export interface Step {
  /** The id of the book. */
  readonly id: string;
  readonly before: Book;
  readonly after: Book;
  readonly label: string;
  readonly at: number;
}

/** Loads the part that keeps versions, and hands it a step. */
const noteLater = (step: Step, onTrouble: (news: string) => void): void => {
  import("./version-keeper.ts").then(({ noteStep }) => noteStep(step, onTrouble)).catch(() => {});
};

/** `idOf` gives the open book's id, or null while nothing can be kept. */
export function watchSteps(
  store: Store,
  idOf: () => string | null,
  onTrouble: (news: string) => void,
  note = noteLater,
): void {
  let before = store.book;
  store.subscribe(() => {
    const [id, step, was, after] = [idOf(), store.past.at(-1), before, store.book];
    before = after;
    // Neither an undo nor another book that is opened goes on from the book that was there.
    if (id === null || !step || step.book !== was || after === was) return;
    note({ id, before: was, after, label: step.label, at: Date.now() }, onTrouble);
  });
}
