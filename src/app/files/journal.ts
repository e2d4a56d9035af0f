/**
 * What was done to the open book since the shelf last kept it, written down at once: the shelf
 * answers in its own time, which a tab that is closed may not have. Each tab writes under keys of
 * its own. A small book is written whole, a large one as what has changed.
 */

import { sameWork } from "../../book/lays.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { asWritten, writeBook } from "../../book/write.ts";
import { applied, type Change, difference } from "./changes.ts";
import { forget, keysOf, recall, remember } from "./storage.ts";

/** One step of the work on a book. */
export interface Entry {
  /** The revision on the shelf when it was written. */
  readonly revision: number;
  /** The step before it in this journal; the change begins there. */
  readonly from: number;
  readonly step: number;
  /** The book's whole text. */
  readonly text?: string;
  /** What changed in the book since the step before, where the book is large. */
  readonly change?: Change;
  /** True where all that was done since the shelf kept the book was to find lays. */
  readonly laysOnly?: true;
}

/** What one tab wrote down of one book, in the order of its steps. */
export interface Written {
  readonly tab: string;
  readonly entries: readonly Entry[];
}

/** The most cells and the most letters of a book that is written whole at every step. */
const MOST_CELLS = 3_000;
const MOST_LETTERS = 150_000;

const START = "ellwand.journal.";
const AREAS = ["localStorage", "sessionStorage"] as const;

/** The book's text if it is short; null says that it is not, without writing a long one. */
function shortText(book: Book): string | null {
  const cells = book.pages.reduce((sum, { rows, columns }) => sum + rows.length * columns.length, 0);
  if (cells > MOST_CELLS || Object.keys(book.lays).length > 50) return null;
  const text = writeBook(book);
  return text.length > MOST_LETTERS ? null : text;
}

export class Journal {
  readonly tab: string;
  #id = "";
  #revision = 0;
  /** The step of the last entry, and the book as it was then. */
  #step = 0;
  #last: Book | null = null;
  /** The book as the shelf was last known to have it. */
  #base: Book | null = null;
  /** Whether work was written down since: the shelf may have taken some of it, so that a step back to `#base` is work too. */
  #hasWork = false;
  #lastStep = 0;
  #keys: { readonly step: number; readonly key: string }[] = [];
  /** Whether the book is so small that its last entry is the whole of it. */
  isWhole = true;

  constructor(tab: string) {
    this.tab = tab;
  }

  get step(): number {
    return this.#step;
  }

  /** Begins with a book as the shelf has it, and with whose step that is; null for a book that is not there yet. */
  begin(
    id: string,
    book: Book | null,
    revision: number,
    by?: { readonly tab: string; readonly step: number } | null,
  ): void {
    this.#id = id;
    this.#revision = revision;
    this.#last = book && asWritten(book);
    this.#base = book;
    this.#hasWork = false;
    // What is written next goes on from the step that the shelf names, though this tab has done others meanwhile.
    this.#lastStep = by?.tab === this.tab ? by.step : this.#step;
    this.#keys = [];
  }

  /** Writes down the next state of the book. False when the browser has no room for it. */
  write(next: Book): boolean {
    this.#step += 1;
    const step = this.#step;
    this.#hasWork ||= !sameWork(next, this.#base);
    const laysOnly = this.#hasWork ? {} : { laysOnly: true as const };
    const common = { revision: this.#revision, from: this.#lastStep, step, ...laysOnly };
    const text = shortText(next);
    this.isWhole = text !== null;
    const book = asWritten(next);
    const entry: Entry =
      text === null
        ? { ...common, change: difference(this.#last, book) ?? { in: [], gone: [] } }
        : { ...common, text };
    const key = `${START}${this.#id}.${this.tab}.${step}`;
    const line = JSON.stringify(entry);
    if (!AREAS.some((area) => remember(area, key, line))) return false;
    this.#last = book;
    this.#lastStep = step;
    if (text !== null) this.#drop(step - 1);
    this.#keys.push({ step, key });
    return true;
  }

  /** The shelf has kept the book as it was at a step, the one that it names. What came after is written anew, on top of that. */
  kept(book: Book, step: number, revision: number, now: Book): void {
    const before = this.#keys;
    this.#revision = revision;
    this.#last = asWritten(book);
    this.#base = book;
    this.#hasWork = false;
    this.#lastStep = step;
    this.#keys = [];
    if (now === book || this.write(now)) for (const { key } of before) drop(key);
    else this.#keys = before;
  }

  /** Everything is on the shelf: nothing needs to be written down. */
  clear(): void {
    this.#drop(this.#step);
  }

  #drop(upTo: number): void {
    for (const { step, key } of this.#keys) if (step <= upTo) drop(key);
    this.#keys = this.#keys.filter(({ step }) => step > upTo);
  }
}

function drop(key: string): void {
  for (const area of AREAS) forget(area, key);
}

const isEntry = (value: unknown): value is Entry => {
  if (typeof value !== "object" || value === null) return false;
  const { revision, from, step, text, change } = value as Partial<Entry>;
  const numbers = [revision, from, step].every((one) => Number.isInteger(one));
  return numbers && (typeof text === "string" || (typeof change === "object" && change !== null));
};

function entryAt(key: string): Entry | null {
  for (const area of AREAS) {
    try {
      const entry: unknown = JSON.parse(recall(area, key) ?? "null");
      if (isEntry(entry)) return entry;
    } catch {
      // A line that was cut off says nothing.
    }
  }
  return null;
}

const keysFor = (id: string): string[] => [
  ...new Set(AREAS.flatMap((area) => keysOf(area, `${START}${id}.`))),
];

/** What was written down of a book by every tab and is still there. */
export function writtenOf(id: string): Written[] {
  const byTab = new Map<string, Entry[]>();
  for (const key of keysFor(id)) {
    const tab = key.slice(START.length + id.length + 1).split(".")[0]!;
    const entry = entryAt(key);
    if (entry) byTab.set(tab, [...(byTab.get(tab) ?? []), entry]);
  }
  return [...byTab].map(([tab, entries]) => ({ tab, entries: entries.sort((a, b) => a.step - b.step) }));
}

export function dropWritten(id: string, tab: string): void {
  for (const key of keysFor(id)) if (key.startsWith(`${START}${id}.${tab}.`)) drop(key);
}

/** The books of which something is written down. */
export const writtenIds = (): string[] => [
  ...new Set(
    AREAS.flatMap((area) => keysOf(area, START)).map((key) => key.slice(START.length).split(".")[0]!),
  ),
];

/**
 * The book that a journal comes to. It begins with a book that has all of the journal up to step
 * `from`, or with none. Null when the steps can't be put together.
 */
export function broughtForward(book: Book | null, entries: readonly Entry[], from: number): Book | null {
  let state: unknown = book && asWritten(book);
  let at = from;
  try {
    for (const { text, change, step, from: before } of entries) {
      if (step <= from) continue;
      if (text !== undefined) state = asWritten(theBook(text));
      else if (change && before === at) state = applied(state, change);
      else continue;
      at = step;
    }
    return at === Math.max(from, entries.at(-1)?.step ?? 0) ? theBook(writeBook(state as Book)) : null;
  } catch {
    return null;
  }
}

/** Through the one door: whatever was written down, what comes of it is a book, or it throws. */
function theBook(text: string): Book {
  const reading = readBook(text);
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
}
