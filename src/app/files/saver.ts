/**
 * Saves the open book: every step is written down before the engine works on it, the shelf takes the
 * book shortly after, and neither writes over what another tab has kept meanwhile.
 */
import { phrase, plural } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { sameState, sameWork } from "../../book/lays.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { bookParts, writeBook } from "../../book/write.ts";
import { retitle } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import { reasonOf } from "../faults/in-time.ts";
import { browserClock } from "../following/after-paint.ts";
import { inSlices, nextTask } from "../progress/in-slices.ts";
import { isFull } from "./full.ts";
import { dropWritten, Journal } from "./journal.ts";
import type { KeepingState } from "./keeping.ts";
import { askToKeepBooks } from "./lasting.ts";
import { freshRecord, type Library, titled } from "./library.ts";
import { FIRST_CELL } from "./place.ts";
import type { BookRecord } from "./shelf.ts";
import { keepOnly, keepSteps } from "./steps.ts";
import { TAB } from "./tab.ts";

/** How long the writing of a large book waits for a frame with time left, in milliseconds. */
const PATIENCE = 100;

export const withoutLays = (book: Book): string => writeBook({ ...book, lays: {} });

/** What the saver asks for when another tab has changed the book. */
export interface Meeting {
  /** Opens the book again, as the other tab has kept it. */
  readonly reopen: (id: string) => void;
  /** The work here has become a book of its own, which this tab now holds. */
  readonly parted: () => void;
}

export class Saver {
  readonly #store: Store;
  readonly #bookcase: Library;
  readonly #keeping: KeepingState;
  readonly #meeting: Meeting;
  readonly journal = new Journal(TAB);
  record: BookRecord;
  /** The book as it is on the shelf. */
  kept: Book | null;
  /** The book as its last file has it. */
  copied: Book | null = null;
  place: Place = FIRST_CELL;
  /** Journals that are not needed any more once the open book is on the shelf. */
  readonly taken: { readonly id: string; readonly tab: string }[] = [];
  /** Takes back what was to be put on the shelf after the paint; null when nothing is. */
  #cancel: (() => void) | null = null;
  /** Whether the page is being left, and nothing may wait for the next task. */
  isLeaving = false;
  #line: Promise<void> = Promise.resolve();
  /** Whether the browser had room to write the last step down. */
  #written = true;

  constructor(store: Store, bookcase: Library, record: BookRecord, keeping: KeepingState, meeting: Meeting) {
    this.#store = store;
    this.#bookcase = bookcase;
    this.#keeping = keeping;
    this.#meeting = meeting;
    this.record = record;
    // What the store begins with is no one's work.
    this.kept = store.book;
    store.beforeWork = (next) => {
      if (bookcase.shelf) this.#written = this.journal.write(next);
    };
    store.subscribe(this.#notice);
  }

  /** Whether the open book holds work that is neither on the shelf nor in a file. */
  atRisk(): boolean {
    const { book } = this.#store;
    const safe = this.#keeping.now.state !== "unsaved" && this.#written;
    return !safe && !sameWork(book, this.kept) && !sameWork(book, this.copied);
  }

  readonly #notice = (): void => {
    const { book } = this.#store;
    if (this.#keeping.now.copied?.changed === false && !sameWork(book, this.copied))
      this.#keeping.change({ copied: { ...this.#keeping.now.copied, changed: true } });
    if (book === this.kept || !this.#bookcase.shelf) return;
    this.isLeaving = false;
    if (this.#keeping.now.state === "saved") this.#keeping.change({ state: "saving" });
    // A small book is kept at once; what was done to a large one is in the journal, and the screen goes first.
    if (this.journal.isWhole) this.flush();
    else this.#cancel ??= browserClock.painted(() => this.flush(), PATIENCE);
  };

  /** Puts on the shelf what is not there yet. */
  flush(): Promise<void> {
    this.#cancel?.();
    this.#cancel = null;
    this.#line = this.#line.then(() => this.#put());
    return this.#line;
  }

  /** Comes when all that is being put on the shelf is there. */
  settled(): Promise<void> {
    return this.#line;
  }

  async #put(): Promise<void> {
    const { book } = this.#store;
    const { shelf } = this.#bookcase;
    if (book === this.kept || !shelf) return;
    const { step } = this.journal;
    // After a failure the shelf may hold more than is known here.
    if (this.#keeping.now.state !== "unsaved" && sameState(book, this.kept)) {
      // A calculation that is made again makes another object of the same book.
      this.kept = book;
      const { by } = this.record;
      this.journal.kept(book, by?.tab === TAB ? by.step : step, this.record.revision, book);
      return this.#keeping.change({ state: "saved", trouble: null });
    }
    const by = { tab: TAB, step };
    const record: BookRecord = {
      ...this.record,
      title: book.title,
      changed: Date.now(),
      place: this.place,
      by,
    };
    const steps = keepSteps(record.id, by, this.#store.past, book);
    let revision: number | null;
    try {
      const parts = await inSlices(bookParts(book), () => (this.isLeaving ? Promise.resolve() : nextTask()));
      revision = await this.#inRoom(() => shelf.keep(record, parts));
    } catch (fault) {
      const trouble = phrase`this book could not be saved in the browser (${reasonOf(fault)}): save it to a file`;
      return this.#keeping.change({ trouble, state: "unsaved" });
    }
    if (revision === null) return (await this.#join(book)) ? this.#put() : this.#part();
    this.record = { ...record, revision };
    this.kept = book;
    // A lay that was found since is no change of the work that the file holds.
    if (this.copied && sameWork(book, this.copied))
      shelf
        .note(record.id, (one) => (one.copied ? { ...one, copied: { ...one.copied, revision } } : one))
        .catch(() => {});
    this.journal.kept(book, step, revision, this.#store.book);
    for (const { id, tab } of this.taken.splice(0)) dropWritten(id, tab);
    // Only then is all of it saved: a page that is loaded again at once can take its last step back.
    await steps;
    keepOnly(record.id, by);
    const state = this.#store.book === book ? "saved" : "saving";
    this.#keeping.change({ state, trouble: null, keptAt: record.changed });
    // Asked when there is work of someone's to keep.
    if (revision > 1) askToKeepBooks();
  }

  /** Where the browser's storage is full, earlier versions of books make room, the oldest first. */
  async #inRoom<T>(keep: () => Promise<T>): Promise<T> {
    let deleted = 0;
    for (;;) {
      try {
        return await keep();
      } catch (fault) {
        if (!isFull(fault)) throw fault;
        const { makeRoom } = await import("./versions/version-shelf.ts");
        const count = await makeRoom();
        if (count === 0) throw fault;
        deleted += count;
        const many = phrase`${plural(deleted, "the oldest earlier version was", "the # oldest earlier versions were")}`;
        this.#keeping.addNews(
          phrase`The browser's storage is full: ${many} deleted to make room for your books`,
        );
      }
    }
  }

  /**
   * Another tab has put the book on the shelf. Where one of the two has only found lays since, both go
   * on with the same book, and no copy is made; false when both have changed it.
   */
  async #join(mine: Book): Promise<boolean> {
    const found = await this.#bookcase.shelf?.read(this.record.id);
    const reading = found ? readBook(found.text) : null;
    if (!found || !reading || "reason" in reading || !this.kept) return false;
    const { revision } = found.record;
    if (withoutLays(reading.book) === withoutLays(this.kept)) {
      this.record = { ...this.record, revision };
      this.kept = reading.book;
      this.journal.kept(reading.book, this.journal.step, revision, this.#store.book);
      this.#store.takeLays(reading.book.lays);
      return true;
    }
    if (!sameWork(mine, this.kept)) return false;
    this.kept = mine;
    // Later: what is going on now has to come to its end before another state is opened.
    setTimeout(() => this.#meeting.reopen(found.record.id));
    return true;
  }

  /** Another tab has kept changes of this book: what was changed here becomes a book of its own. */
  #part(): void {
    const { title } = this.#store.book;
    const own = titled(title, phrase`second copy`);
    this.taken.push({ id: this.record.id, tab: TAB });
    this.record = freshRecord({ ...this.#store.book, title: own });
    this.journal.begin(this.record.id, null, 0);
    this.#meeting.parted();
    this.#keeping.change({ id: this.record.id, copied: null });
    this.#keeping.addNews(
      phrase`“${title}” was changed in another tab; your changes here are saved as a separate book, “${own}”`,
    );
    this.#store.run(retitle(own));
  }
}
