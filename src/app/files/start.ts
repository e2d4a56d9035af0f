/**
 * The start: the book that was open last, or on the first start a ready one. A book that does not
 * open is passed over and stays on the shelf as it is.
 */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { startDesk, whenPlannerComes } from "../../lay/start-desk.ts";
import { Store } from "../../store/store.ts";
import { reasonOf } from "../faults/in-time.ts";
import { hungAt } from "./attempt.ts";
import { Keeper } from "./keeper.ts";
import { Library } from "./library.ts";
import { newBook } from "./new-book.ts";
import { stopped } from "./opener.ts";
import { openEarlier } from "./others.ts";
import { firstBook } from "./ready.ts";
import { type BookRecord, Shelf } from "./shelf.ts";
import { recall } from "./storage.ts";
import { holdTab, tabsAlive } from "./tab.ts";
import { shelveBegun } from "./unkept.ts";

export interface Start {
  readonly store: Store;
  readonly keeper: Keeper;
}

/** With this at the end of the page's address the start passes over every kept book. */
export const FRESH = "#fresh";

const HUNG = phrase`the page did not finish opening it last time`;

async function freshBook(): Promise<Book> {
  try {
    const reading = await firstBook();
    return "book" in reading ? reading.book : newBook();
  } catch {
    return newBook();
  }
}

async function openShelf(): Promise<{ shelf: Shelf | null; records: BookRecord[]; trouble: string | null }> {
  try {
    const shelf = await Shelf.open();
    return { shelf, records: await new Library(shelf).list(), trouble: null };
  } catch (fault) {
    const trouble = phrase`Books cannot be saved in this browser at present: ${reasonOf(fault)}. Save your work to a file`;
    return { shelf: null, records: [], trouble };
  }
}

/** Works out again what has no lay yet. */
function layAgain(store: Store): void {
  const without = store.engine.laid().filter(({ lays }) => lays.some(({ answer }) => "refusal" in answer));
  if (without.length > 0) store.workAgain(without.map(({ place }) => place));
}

export async function start(): Promise<Start> {
  holdTab();
  const { shelf, records, trouble } = await openShelf();
  // No first start after all, though nothing was remembered of an earlier one.
  if (records.length > 0) delete document.documentElement.dataset.first;
  const store = new Store(newBook(), startDesk);
  whenPlannerComes(() => layAgain(store));
  const keeper = new Keeper(store, new Library(shelf), trouble);
  if (location.hash === FRESH) {
    history.replaceState(null, "", location.pathname + location.search);
    await keeper.add(newBook());
    return { store, keeper };
  }
  const begun = shelf ? await shelveBegun(keeper.bookcase).catch(() => []) : [];
  await openOne(keeper, records);
  for (const title of begun)
    keeper.tellNews(phrase`A book begun in a tab that was closed is saved as “${title}”`);
  return { store, keeper };
}

/** Opens the book of this tab, else the one opened last in any, else an earlier state, else a ready book. */
async function openOne(keeper: Keeper, records: readonly BookRecord[]): Promise<void> {
  const here = recall("sessionStorage", "ellwand.open");
  const order = [...records.filter(({ id }) => id === here), ...records.filter(({ id }) => id !== here)];
  const alive = await tabsAlive();
  const passed: string[] = [];
  const tell = () => {
    for (const one of passed) keeper.tellNews(one);
  };
  for (const record of order) {
    const { id, title } = record;
    const hung = hungAt(id, alive) === "book";
    if (hung) keeper.bookcase.note(id, HUNG);
    const reason = hung ? HUNG : await keeper.open(id);
    if (reason === null) return tell();
    passed.push(
      phrase`“${title}” was not opened: ${reason}. It is unchanged; under Books you can save its text to a file`,
    );
    if (passed.length === 1 && reason !== stopped() && (await openEarlier(keeper, record)) === null) {
      passed.push(phrase`Its earlier state is open now, as a separate book`);
      return tell();
    }
  }
  await keeper.add(await freshBook());
  tell();
}
