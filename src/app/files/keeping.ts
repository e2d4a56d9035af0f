/** What the page shows of how the open book is kept. */
import type { Place } from "../../book/address.ts";

export interface Keeping {
  readonly id: string;
  /** Goes up by one when another book is opened. */
  readonly opening: number;
  /** The cell that was chosen when the book was last open. */
  readonly place: Place;
  /** Whether everything that was done is on the shelf; "unsaved" when it can't be put there. */
  readonly state: "saved" | "saving" | "unsaved";
  /** True while another tab has the book open too. */
  readonly elsewhere: boolean;
  /** When the shelf last took the book, in milliseconds since 1970; null when it never has. */
  readonly keptAt: number | null;
  /** When the last copy was saved to a file, whether the book has changed since, and the file's name where the page knows it. */
  readonly copied: { readonly at: number; readonly changed: boolean; readonly file?: string } | null;
  /** Why nothing can be kept in this browser, in a sentence. */
  readonly trouble: string | null;
  /** Something that happened to the book without being asked for. */
  readonly news: string | null;
}

/** The state that the page shows; listeners are called when it changes. */
export class KeepingState {
  #now: Keeping;
  readonly #listeners = new Set<() => void>();

  constructor(first: Keeping) {
    this.#now = first;
  }

  get now(): Keeping {
    return this.#now;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  change(change: Partial<Keeping>): void {
    this.#now = { ...this.#now, ...change };
    for (const listener of [...this.#listeners]) listener();
  }

  /** Adds news to the news that is not dismissed yet. */
  addNews(news: string): void {
    const before = this.#now.news;
    this.change({ news: before?.includes(news) ? before : [before, news].filter(Boolean).join(". ") });
  }
}
