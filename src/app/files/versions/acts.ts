/** What a person does with an earlier version of a book. */
import { phrase } from "../../../../functions/phrase.ts";
import { readBook } from "../../../book/read.ts";
import type { Keeper } from "../keeper.ts";
import { titled } from "../library.ts";
import { replaceBook } from "../replace-book.ts";
import { whenText } from "../when.ts";
import type { Version } from "./rule.ts";
import { keepNow } from "./version-keeper.ts";
import { textOf } from "./version-shelf.ts";

/**
 * Brings an earlier version of a book back, as one step that undo takes back. The present state
 * of the book is first kept as a version. Returns null, or the reason why the version can't be brought back.
 */
export async function bringVersionBack(
  keeper: Keeper,
  version: Version,
  title: string,
): Promise<string | null> {
  const reading = readBook(await textOf(version));
  if ("reason" in reading) return reading.reason;
  if (version.book !== keeper.state.id) {
    const reason = await keeper.open(version.book);
    if (reason !== null) return reason;
  }
  const label = phrase`bring back the version of ${whenText(version.at)}`;
  // Where this fails, undo still has the present state.
  const present = keeper.book;
  await keepNow(version.book, present, label).catch(() => {});
  const refusal = await replaceBook(keeper.store, present, reading.book, label);
  if (refusal === null)
    keeper.tellNews(phrase`“${title}” is back in its state of ${whenText(version.at)}; Undo takes this back`);
  return refusal;
}

/** Opens an earlier version as a book of its own. Returns null, or the reason why it can't be opened. */
export async function openVersion(keeper: Keeper, version: Version): Promise<string | null> {
  const reading = readBook(await textOf(version));
  if ("reason" in reading) return reading.reason;
  const after = phrase`version of ${whenText(version.at)}`;
  await keeper.add({ ...reading.book, title: titled(reading.book.title, after) });
  return null;
}
