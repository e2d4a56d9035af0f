/** Steps that take long: what goes on is said before the page stands still. */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import type { Store } from "../../store/store.ts";
import { shownWhile } from "./ongoing.ts";

/** To calculate this many cells takes a slow machine about a second. */
export const MANY_CELLS = 1500;

/** How many cells stand in the rows in which two books differ. */
function changedCells(before: Book, after: Book): number {
  const count = Math.max(before.pages.length, after.pages.length);
  let cells = 0;
  for (let i = 0; i < count; i += 1) {
    const [was, is] = [before.pages[i], after.pages[i]];
    if (was === is) continue;
    const rows = Math.max(was?.rows.length ?? 0, is?.rows.length ?? 0);
    for (let row = 0; row < rows; row += 1) {
      const [old, next] = [was?.rows[row], is?.rows[row]];
      if (old !== next) cells += Math.max(old?.length ?? 0, next?.length ?? 0);
    }
  }
  return cells;
}

/** The step that was said and is about to be done; null when no step was said. */
let coming: Promise<void> | null = null;

/** Does `act` at once, or where it is about many cells, once the page has said what goes on; never before an earlier such step. */
export function saidIfMany(cells: number, what: () => string, act: () => void): void {
  if (cells < MANY_CELLS && !coming) {
    act();
    return;
  }
  const said = () => shownWhile(what(), act);
  const mine: Promise<void> = (coming ? coming.then(said) : said()).catch(reportLater).finally(() => {
    if (coming === mine) coming = null;
  });
  coming = mine;
}

/** An error that nothing caught is shown by the page. */
const reportLater = (fault: unknown): void => {
  setTimeout(() => {
    throw fault;
  });
};

/** Takes the last step back, or with `again` the one that was taken back. `onRefused` hears why it could not be. */
export function takeStep(store: Store, again: boolean, onRefused: (sentence: string) => void): void {
  if (coming) {
    void coming.then(() => takeStep(store, again, onRefused));
    return;
  }
  const step = again ? store.future.at(-1) : store.past.at(-1);
  if (!step) return;
  const what = () => (again ? phrase`Redo: ${step.label}` : phrase`Undo: ${step.label}`);
  saidIfMany(changedCells(store.book, step.book), what, () => {
    const refusal = again ? store.redo() : store.undo();
    if (refusal) onRefused(refusal);
  });
}
