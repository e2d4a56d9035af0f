/**
 * Saves the open book into the file that it was saved to before. What another program wrote there
 * meanwhile is never written over without a question, and a write that fails leaves the file as it was.
 */
import { phrase } from "../../../../functions/phrase.ts";
import { writeBook } from "../../../book/write.ts";
import { reasonOf } from "../../faults/in-time.ts";
import { fileName } from "../disk.ts";
import type { Keeper } from "../keeper.ts";
import { whenText } from "../when.ts";
import { digestOf, keepLink, type Link, linkOf } from "./links.ts";
import { chooseWhere, mayWrite, type OwnHandle } from "./pickers.ts";

/** "again": into the book's file; "over": the same, whatever the file holds now; "elsewhere": into another file. */
export type How = "again" | "over" | "elsewhere";

/** Why the book was not saved, for the maker to decide what happens next. */
export interface Question {
  /** The name of the file. */
  readonly file: string;
  readonly sentence: string;
  /** What the file holds now, where that is not what Ellwand wrote; null when it can't or need not be looked at. */
  readonly there: string | null;
  /** The label of the press that writes into the same file. */
  readonly over: string;
}

/** The name of the file, a question, or null when the maker closed the picker. */
export type Saved = { readonly name: string } | { readonly question: Question } | null;

const REASONS: Readonly<Record<string, string>> = {
  NotFoundError: phrase`the file or its folder is no longer there`,
  QuotaExceededError: phrase`there is no room for it on the disk`,
  NotAllowedError: phrase`the browser does not allow this page to write there`,
  NoModificationAllowedError: phrase`another tab or program is writing to it at this moment`,
};

const why = (fault: unknown): string =>
  (fault instanceof DOMException && REASONS[fault.name]) || reasonOf(fault);

const STAYS = phrase`Your book is still saved in this browser.`;

function question(file: string, sentence: string, more: Partial<Question> = {}): Saved {
  return {
    question: { file, sentence, there: null, over: phrase`Try again`, ...more },
  };
}

export async function saveToFile(keeper: Keeper, how: How): Promise<Saved> {
  await keeper.flush();
  const { id } = keeper.state;
  const link = how === "elsewhere" ? null : await linkOf(id);
  const handle = link?.handle ?? (await chooseWhere(fileName(keeper.book.title)));
  if (!handle) return null;
  const file = handle.name;
  try {
    if (!(await mayWrite(handle)))
      return question(
        file,
        phrase`The browser has not given this page the permission to write to it. ${STAYS}`,
      );
  } catch (fault) {
    return question(file, phrase`The permission to write to it could not be asked: ${why(fault)}. ${STAYS}`);
  }
  // Two tabs with the same book write one after the other.
  return navigator.locks.request(`ellwand.own-file.${id}`, async () => {
    const asked = how === "again" && link ? await whatSpeaksAgainst(keeper, link) : null;
    return asked ?? write(keeper, handle);
  });
}

/** Why the file must not be written without a question; null when it holds what Ellwand wrote last. */
async function whatSpeaksAgainst(keeper: Keeper, known: Link): Promise<Saved> {
  const { handle, digest, revision, at } = (await linkOf(known.id)) ?? known;
  const file = handle.name;
  let there: string;
  try {
    there = await (await handle.getFile()).text();
  } catch (fault) {
    return question(file, phrase`It could not be read before saving: ${why(fault)}. ${STAYS}`);
  }
  if (revision > keeper.revision) {
    const sentence = phrase`Another tab saved a newer state of this book to it (${whenText(at)}). Writing over it puts the older state of this tab in its place.`;
    return question(file, sentence, { there, over: phrase`Write over it` });
  }
  if ((await digestOf(there)) === digest || there === writeBook(keeper.book)) return null;
  const sentence = phrase`The file was changed by something other than this book since ${whenText(at)}. Writing over it loses what was changed there.`;
  return question(file, sentence, { there, over: phrase`Write over it` });
}

async function write(keeper: Keeper, handle: OwnHandle): Promise<Saved> {
  const { book, revision } = keeper;
  const { id } = keeper.state;
  const text = writeBook(book);
  try {
    await writeWhole(handle, text);
  } catch (fault) {
    return question(
      handle.name,
      phrase`It was not written: ${why(fault)}. The file holds what it held before. ${STAYS}`,
    );
  }
  let there: string;
  try {
    there = await (await handle.getFile()).text();
  } catch (fault) {
    return question(
      handle.name,
      phrase`It was written, but could not be read again to check it: ${why(fault)}. ${STAYS}`,
    );
  }
  if (there !== text)
    return question(handle.name, phrase`What stands in it now is not what was written. ${STAYS}`);
  await keepLink({ id, handle, digest: await digestOf(text), revision, at: Date.now() });
  keeper.noteFile(book, revision, handle.name);
  return { name: handle.name };
}

/** The browser writes into a file beside it and puts that in its place at the end, so that it is never half written. */
async function writeWhole(handle: OwnHandle, text: string): Promise<void> {
  const stream = await handle.createWritable();
  try {
    await stream.write(text);
    await stream.close();
  } catch (fault) {
    await stream.abort().catch(() => {});
    throw fault;
  }
}

/** Notes that the open book was read from a file, so that it is saved there again. */
export async function linkOpened(keeper: Keeper, handle: OwnHandle): Promise<void> {
  const file = await handle.getFile();
  const { book, revision } = keeper;
  const digest = await digestOf(await file.text());
  await keepLink({ id: keeper.state.id, handle, digest, revision, at: file.lastModified });
  keeper.noteFile(book, revision, file.name, file.lastModified);
}
