/** What tabs that are gone had written down of a book and not put on the shelf any more. */
import { phrase } from "../../../functions/phrase.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { writeBook } from "../../book/write.ts";
import { broughtForward, dropWritten, type Written, writtenIds, writtenOf } from "./journal.ts";
import { type Library, titled } from "./library.ts";
import type { BookRecord } from "./shelf.ts";
import { TAB, tabsAlive } from "./tab.ts";

export interface Unkept {
  readonly tab: string;
  /** The book as the tab left it; null when it can't be put together from what was written down. */
  readonly book: Book | null;
  /** What was written down, as it is. */
  readonly written: string;
  /** Whether it goes on from what the shelf has; false when another tab has kept the book since. */
  readonly fits: boolean;
}

/**
 * Where the browser can't say which tabs are open, a tab other than this one counts as gone: what it
 * wrote is then saved twice rather than lost.
 */
const isGone = (tab: string, alive: ReadonlySet<string> | null): boolean =>
  alive ? !alive.has(tab) : tab !== TAB;

async function writtenByTheGone(id: string): Promise<Written[]> {
  const written = writtenOf(id);
  if (written.length === 0) return [];
  const alive = await tabsAlive();
  return written.filter(({ tab }) => isGone(tab, alive));
}

/** The states that tabs which are gone left of a kept book; journals that hold nothing new are dropped. */
export async function unkeptOf(found: { record: BookRecord; text: string }): Promise<Unkept[]> {
  const { id, revision, by } = found.record;
  const written = await writtenByTheGone(id);
  const reading = readBook(found.text);
  if (written.length === 0 || "reason" in reading) return [];
  const shelved = writeBook(reading.book);
  return written.flatMap(({ tab, entries }) => {
    const own = by?.tab === tab;
    const from = own ? by.step : (entries[0]?.from ?? 0);
    const left = entries.filter(({ step }) => step > from);
    const book = left.length > 0 ? broughtForward(reading.book, left, from) : reading.book;
    // Lays are found again.
    if (left.at(-1)?.laysOnly || (book && writeBook(book) === shelved)) {
      dropWritten(id, tab);
      return [];
    }
    const fits = own || left[0]!.revision === revision;
    return [{ tab, book, written: JSON.stringify(left, null, 2), fits }];
  });
}

/**
 * The text of a kept book with the last changes of tabs that are gone, as it would open; after it the texts of
 * states that do not go on from what the shelf has, each of which would become a book of its own.
 */
export async function latestTexts(library: Library, id: string): Promise<readonly [string, ...string[]]> {
  const kept = await library.kept(id);
  const unkept = await unkeptOf(kept);
  const next = unkept.find(({ book, fits }) => book && fits);
  const others = unkept
    .filter((one) => one !== next)
    .map(({ book, written }) =>
      book ? writeBook({ ...book, title: lastChangesOf(kept.record.title) }) : written,
    );
  return [next ? writeBook(next.book!) : kept.text, ...others];
}

/** The text of a kept book as it would open. */
export const latestText = async (library: Library, id: string): Promise<string> =>
  (await latestTexts(library, id))[0];

/** The title of a state that becomes a book of its own. */
export const lastChangesOf = (title: string): string => titled(title, phrase`with the last changes`);

/** Puts books on the shelf that a tab had begun and that were never there. Gives their titles. */
export async function shelveBegun(library: Library): Promise<string[]> {
  const known = new Set(((await library.shelf?.list()) ?? []).map(({ id }) => id));
  const titles: string[] = [];
  for (const id of writtenIds().filter((one) => !known.has(one))) {
    for (const { tab, entries } of await writtenByTheGone(id)) {
      const book = broughtForward(null, entries, entries[0]?.from ?? 0);
      if (book) {
        const title = lastChangesOf(book.title);
        await library.put(title, writeBook({ ...book, title }));
        titles.push(title);
        dropWritten(id, tab);
      }
    }
  }
  return titles;
}
