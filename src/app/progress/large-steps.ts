/** Steps that take long: what goes on is said before the page stands still. */
import { phrase } from "../../../functions/phrase.ts";
import type { Block } from "../../book/address.ts";
import type { Book, Page } from "../../book/shape.ts";
import type { Command, Store } from "../../store/store.ts";
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

/** Does a large step, which may be stopped while the engine prepares for it. */
export const doLarge = async (store: Store, what: string, act: () => void): Promise<void> =>
  (await import("./stoppable.ts")).doLarge(store, what, act);

/** Does `act` at once, or where it is about many cells, once the page has said what goes on; never before an earlier such step. */
export function saidIfMany(store: Store, cells: number, what: () => string, act: () => void): void {
  if (cells < MANY_CELLS && !coming) {
    act();
    return;
  }
  const said = () => shownWhile(what(), () => doLarge(store, what(), act));
  const mine: Promise<void> = (coming ? coming.then(said) : said()).catch(reportLater).finally(() => {
    if (coming === mine) coming = null;
  });
  coming = mine;
}

/** Does `act` once no step is about to be done: what is chosen by then is what that step chose. */
export function inTurn(act: () => void): void {
  if (coming) void coming.then(() => inTurn(act));
  else act();
}

/** An error that nothing caught is shown by the page. */
const reportLater = (fault: unknown): void => {
  setTimeout(() => {
    throw fault;
  });
};

/** How many cells a block has. */
export const cellsOf = ({ top, left, bottom, right }: Block): number =>
  (bottom - top + 1) * (right - left + 1);

/** Does a step that moves the cells of a whole page, such as the insertion of a row; the page says which when it is large. */
export function saidIfLarge(
  store: Store,
  page: Page | undefined,
  label: Command["label"],
  act: () => void,
): void {
  const cells = page ? page.rows.length * page.columns.length : 0;
  saidIfMany(store, cells, () => phrase`In progress: ${label}`, act);
}

/** Takes the last step back, or with `again` the one that was taken back. `onRefused` hears why it could not be. */
export function takeStep(store: Store, again: boolean, onRefused: (sentence: string) => void): void {
  inTurn(() => {
    const step = again ? store.future.at(-1) : store.past.at(-1);
    if (!step) return;
    const what = () => (again ? phrase`Redo: ${step.label}` : phrase`Undo: ${step.label}`);
    saidIfMany(store, changedCells(store.book, step.book), what, () => {
      // What was done meanwhile is not taken back in its place.
      if (step !== (again ? store.future.at(-1) : store.past.at(-1))) return;
      const refusal = again ? store.redo() : store.undo();
      if (refusal) onRefused(refusal);
    });
  });
}
