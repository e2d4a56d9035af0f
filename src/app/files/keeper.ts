/** Keeps the open book in the browser: the saver saves it, the opener opens another, and files take copies. */
import type { Place } from "../../book/address.ts";
import { sameWork } from "../../book/lays.ts";
import type { Book } from "../../book/shape.ts";
import type { Store } from "../../store/store.ts";
import { saveFile, saveText } from "./disk.ts";
import { type Keeping, KeepingState } from "./keeping.ts";
import { freshRecord, type Library } from "./library.ts";
import { Opener } from "./opener.ts";
import { FIRST_CELL, rememberPlace } from "./place.ts";
import { Saver } from "./saver.ts";
import { latestTexts } from "./unkept.ts";
import { watchSteps } from "./versions/watch.ts";

export class Keeper {
  readonly bookcase: Library;
  readonly store: Store;
  readonly #keeping: KeepingState;
  readonly #saver: Saver;
  readonly #opener: Opener;

  constructor(store: Store, bookcase: Library, trouble: string | null = null) {
    this.store = store;
    this.bookcase = bookcase;
    const record = freshRecord(store.book);
    this.#keeping = new KeepingState({
      id: record.id,
      opening: 0,
      place: FIRST_CELL,
      state: bookcase.shelf ? "saved" : "unsaved",
      elsewhere: false,
      keptAt: null,
      copied: null,
      trouble,
      news: null,
    });
    this.#saver = new Saver(store, bookcase, record, this.#keeping, {
      reopen: (id) => this.open(id),
      parted: () => this.#opener.hold(),
    });
    this.#opener = new Opener(store, bookcase, this.#keeping, this.#saver);
    const kept = () => (bookcase.shelf ? this.#saver.record.id : null);
    watchSteps(store, kept, (news) => this.tellNews(news));
    addEventListener("pagehide", this.#closing);
    document.addEventListener("visibilitychange", this.#closing);
    addEventListener("beforeunload", (event) => {
      if (this.#saver.atRisk()) event.preventDefault();
    });
  }

  /** The open book. */
  get book(): Book {
    return this.store.book;
  }

  /** The revision of the open book that the shelf has. */
  get revision(): number {
    return this.#saver.record.revision;
  }

  get state(): Keeping {
    return this.#keeping.now;
  }

  readonly subscribe = (listener: () => void): (() => void) => this.#keeping.subscribe(listener);

  /** Adds news to the news that is not dismissed yet. */
  tellNews(news: string): void {
    this.#keeping.addNews(news);
  }

  /** Puts on the shelf what is not there yet. */
  flush(): Promise<void> {
    return this.#saver.flush();
  }

  /** Opens a kept book; the reason why not when it can't be opened. */
  open(id: string): Promise<string | null> {
    return this.#opener.open(id);
  }

  /** Opens a book that is not on the shelf yet, and puts it there. */
  add(book: Book): Promise<void> {
    return this.#opener.add(book);
  }

  /** Saves the open book to a file; gives the file's name. */
  saveCopy(): string {
    const { book } = this.store;
    const name = saveFile(book);
    this.#saver.copied = book;
    this.#keeping.change({ copied: { at: Date.now(), changed: false } });
    this.flush()
      .then(() => this.bookcase.copied([this.#saver.record.id]))
      .catch(() => {});
    return name;
  }

  /** Notes that a file holds the open book as it was in a revision. */
  noteFile(book: Book, revision: number, file: string, at = Date.now()): void {
    this.#saver.copied = book;
    this.#keeping.change({ copied: { at, changed: !sameWork(this.book, book), file } });
    this.bookcase.inFile(this.#saver.record.id, { at, revision, file }).catch(() => {});
  }

  /**
   * Saves every book to one file, with what tabs that are gone had not put on the shelf any more; what can't be read
   * goes in as it is kept. Gives the file's name and how many books are in it.
   */
  async saveAll(): Promise<{ name: string; count: number }> {
    await this.flush();
    const { text, ids, count } = await this.bookcase.everything((id) => latestTexts(this.bookcase, id));
    const name = saveText(text, `ellwand-books-${new Date().toISOString().slice(0, 10)}.json`);
    await this.bookcase.copied(ids);
    if (this.store.book === this.#saver.kept && ids.includes(this.#saver.record.id)) {
      this.#saver.copied = this.store.book;
      this.#keeping.change({ copied: { at: Date.now(), changed: false } });
    }
    return { name, count };
  }

  /** Notes which cell is chosen. */
  at(place: Place): void {
    this.#saver.place = place;
  }

  dismiss(): void {
    this.#keeping.change({ news: null, trouble: null });
  }

  readonly #closing = (event: Event): void => {
    if (event.type === "visibilitychange" && document.visibilityState === "visible") return;
    rememberPlace(this.#saver.record.id, this.#saver.place);
    // What the engine did not accept need not be written down.
    if (this.store.book === this.#saver.kept) this.#saver.journal.clear();
    this.#saver.isLeaving = true;
    this.flush();
  };
}
