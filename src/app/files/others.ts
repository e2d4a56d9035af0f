/** What a person does with books beside the open one. */
import { readBook } from "../../book/read.ts";
import { writeBook } from "../../book/write.ts";
import { reasonOf } from "../faults/in-time.ts";
import type { Keeper } from "./keeper.ts";
import { titled } from "./library.ts";
import { newBook } from "./new-book.ts";
import type { BookRecord } from "./shelf.ts";
import type { Version } from "./versions/rule.ts";
import { whenText } from "./when.ts";

/** Opens the state in which a book was opened before, as a book of its own; the reason why not. */
export async function openEarlier(keeper: Keeper, { id, title }: BookRecord): Promise<string | null> {
  try {
    const reading = readBook((await keeper.bookcase.earlier(id)) ?? "");
    if ("reason" in reading) return reading.reason;
    await keeper.add({ ...reading.book, title: titled(title, "earlier state") });
    return null;
  } catch (fault) {
    return reasonOf(fault);
  }
}

/**
 * Brings an earlier version of a book back, as one step that undo takes back. The book as it is now
 * is kept as a version before. The reason why not, or null.
 */
export async function bringVersionBack(
  keeper: Keeper,
  version: Version,
  title: string,
): Promise<string | null> {
  const { textOf } = await import("./versions/version-shelf.ts");
  const { keepNow } = await import("./versions/version-keeper.ts");
  const reading = readBook(await textOf(version));
  if ("reason" in reading) return reading.reason;
  if (version.book !== keeper.state.id) {
    const reason = await keeper.open(version.book);
    if (reason !== null) return reason;
  }
  const label = `bring back the version of ${whenText(version.at)}`;
  // Where this fails, undo still has the present state.
  await keepNow(version.book, keeper.book, label).catch(() => {});
  const refusal = keeper.replace(reading.book, label);
  if (refusal === null)
    keeper.tellNews(`“${title}” is again as it was at ${whenText(version.at)}; Undo takes this back`);
  return refusal;
}

/** Opens an earlier version as a book of its own. The reason why not, or null. */
export async function openVersion(keeper: Keeper, version: Version): Promise<string | null> {
  const { textOf } = await import("./versions/version-shelf.ts");
  const reading = readBook(await textOf(version));
  if ("reason" in reading) return reading.reason;
  const after = `version of ${whenText(version.at)}`;
  await keeper.add({ ...reading.book, title: titled(reading.book.title, after) });
  return null;
}

/** Puts a copy of a book on the shelf, under a title of its own, as the book is now. */
export async function copyBook(keeper: Keeper, { id }: BookRecord, title: string): Promise<void> {
  if (!/\S/.test(title)) throw new Error("a book needs a title");
  if (id === keeper.state.id) await keeper.flush();
  const reading = readBook(await keeper.bookcase.text(id));
  if ("reason" in reading) throw new Error(reading.reason);
  await keeper.bookcase.put(title, writeBook({ ...reading.book, title }));
}

/** Puts a book in the bin. In place of the open one, the next or a blank one is opened. */
export async function throwAway(keeper: Keeper, id: string): Promise<void> {
  await keeper.flush();
  await keeper.bookcase.throwAway(id);
  if (id !== keeper.state.id) return;
  for (const next of await keeper.bookcase.list()) if ((await keeper.open(next.id)) === null) return;
  await keeper.add(newBook());
}
