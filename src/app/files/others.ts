/** What a person does with books beside the open one. */
import { phrase } from "../../../functions/phrase.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { writeBook } from "../../book/write.ts";
import { reasonOf } from "../faults/in-time.ts";
import type { Keeper } from "./keeper.ts";
import { titled } from "./library.ts";
import { newBook } from "./new-book.ts";
import { replaceBook } from "./replace-book.ts";
import type { BookRecord } from "./shelf.ts";
import { latestText } from "./unkept.ts";

/** Opens the state in which a book was opened before, as a book of its own. Returns null, or the reason why it can't be opened. */
export async function openEarlier(keeper: Keeper, { id, title }: BookRecord): Promise<string | null> {
  try {
    const reading = readBook((await keeper.bookcase.earlier(id)) ?? "");
    if ("reason" in reading) return reading.reason;
    await keeper.add({ ...reading.book, title: titled(title, phrase`earlier state`) });
    return null;
  } catch (fault) {
    return reasonOf(fault);
  }
}

/** Puts a copy of a book on the shelf, under a title of its own, as the book is now. Returns the id of the copy. */
export async function copyBook(keeper: Keeper, { id }: BookRecord, title: string): Promise<string> {
  if (!/\S/.test(title)) throw new Error(phrase`a book needs a title`);
  if (id === keeper.state.id) await keeper.flush();
  const reading = readBook(await latestText(keeper.bookcase, id));
  if ("reason" in reading) throw new Error(reading.reason);
  return keeper.bookcase.put(title, writeBook({ ...reading.book, title }));
}

/**
 * Goes on with the next version of the open book, as one step, and keeps the book as it was as a book of its own.
 * Returns null, or why the next version is refused: then no copy stays behind.
 */
export async function goOnAsVersion(
  keeper: Keeper,
  record: BookRecord,
  former: Book,
  { book, number }: { readonly book: Book; readonly number: number },
): Promise<string | null> {
  const copy = await copyBook(keeper, record, former.title);
  // What was typed while the copy was made is not in it, and would not be in the next version.
  const refusal = await replaceBook(keeper.store, former, book, phrase`begin version ${number}`);
  if (refusal !== null) await keeper.bookcase.deletePermanently(copy);
  return refusal;
}

/** Puts a book in the bin. In place of the open one, the next or a blank one is opened. */
export async function throwAway(keeper: Keeper, id: string): Promise<void> {
  await keeper.flush();
  await keeper.bookcase.throwAway(id);
  if (id !== keeper.state.id) return;
  for (const next of await keeper.bookcase.list()) if ((await keeper.open(next.id)) === null) return;
  await keeper.add(newBook());
}
