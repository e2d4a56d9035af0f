/** The start: the book that was open last, or on the first start a ready one. */
import { type Book, blankBook } from "../../book/shape.ts";
import { layDesk } from "../../lay/desk.ts";
import { Store } from "../../store/store.ts";
import { Keeper } from "./keeper.ts";
import { firstBook } from "./ready.ts";
import { Shelf } from "./shelf.ts";

export interface Start {
  readonly store: Store;
  readonly keeper: Keeper;
}

async function freshBook(): Promise<Book> {
  const reading = await firstBook();
  return "book" in reading ? reading.book : blankBook("A new book", "in", "1/8");
}

export async function start(): Promise<Start> {
  let shelf: Shelf | null = null;
  let trouble: string | null = null;
  try {
    shelf = await Shelf.open();
  } catch {
    trouble = "this browser keeps no books (it may be in private mode): save yours to a file";
  }
  const store = new Store(blankBook("A new book", "in", "1/8"), layDesk);
  const keeper = new Keeper(store, shelf, trouble);
  const here = sessionStorage.getItem("ellwand.open");
  const known = (await keeper.list()).map(({ id }) => id);
  // The book of this very tab before the one opened last in any.
  const order = here && known.includes(here) ? [here, ...known.filter((id) => id !== here)] : known;
  for (const id of order) if ((await keeper.open(id)) === null) return { store, keeper };
  await keeper.add(await freshBook());
  return { store, keeper };
}
