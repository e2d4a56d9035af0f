/**
 * Keeps the open book in the browser: what was done is written down before the engine works on it,
 * the shelf takes it shortly after, and neither writes over what another tab has kept meanwhile.
 */
import type { Place } from "../../book/address.ts";
import { sameWork } from "../../book/lays.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { writeBook } from "../../book/write.ts";
import { retitle } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import { reasonOf } from "../faults/in-time.ts";
import { beginOpening, endOpening, hungAt } from "./attempt.ts";
import { saveFile, saveText } from "./disk.ts";
import { holdBook } from "./hold.ts";
import { dropWritten, Journal, writtenOf } from "./journal.ts";
import type { Keeping } from "./keeping.ts";
import { askToKeepBooks } from "./lasting.ts";
import { type Library, newId, titled } from "./library.ts";
import { recallPlace, rememberPlace } from "./place.ts";
import type { BookRecord } from "./shelf.ts";
import { remember } from "./storage.ts";
import { TAB, tabsAlive } from "./tab.ts";
import { type Unkept, unkeptOf } from "./unkept.ts";

/** A book that is written in less than this, in milliseconds, is kept at once. */
const QUICK = 4;
/** How long a change of a larger book waits: so many times as long as the book takes to write, at most 150 ms. */
const TIMES = 3;
const LONGEST = 150;

const withoutLays = (book: Book): string => writeBook({ ...book, lays: {} });

const FIRST_CELL: Place = { page: 0, row: 0, column: 0 };

export class Keeper {
  readonly bookcase: Library;
  readonly #store: Store;
  readonly #journal = new Journal(TAB);
  #record: BookRecord;
  /** The book as it is on the shelf. */
  #kept: Book | null;
  /** The book as its last file has it. */
  #copied: Book | null = null;
  #place: Place = FIRST_CELL;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #line: Promise<void> = Promise.resolve();
  /** How long the book took to write last, in milliseconds. */
  #cost = 0;
  /** Whether the browser had room to write the last step down. */
  #written = true;
  /** Journals that are not needed any more once the open book is on the shelf. */
  #taken: { readonly id: string; readonly tab: string }[] = [];
  /** The opening of a book that is going on. */
  #opening: Promise<unknown> = Promise.resolve();
  #letGo: () => void = () => {};
  #holding: string | null = null;
  #state: Keeping;
  readonly #listeners = new Set<() => void>();

  constructor(store: Store, bookcase: Library, trouble: string | null = null) {
    this.#store = store;
    this.bookcase = bookcase;
    this.#record = this.#freshRecord(store.book);
    // What the store begins with is no one's work.
    this.#kept = store.book;
    this.#state = {
      id: this.#record.id,
      opening: 0,
      place: FIRST_CELL,
      state: bookcase.shelf ? "saved" : "unsaved",
      elsewhere: false,
      copied: null,
      trouble,
      news: null,
    };
    store.beforeWork = (next) => {
      if (bookcase.shelf) this.#written = this.#journal.write(next);
    };
    store.subscribe(this.#notice);
    addEventListener("pagehide", this.#closing);
    document.addEventListener("visibilitychange", this.#closing);
    addEventListener("beforeunload", (event) => {
      if (this.#atRisk()) event.preventDefault();
    });
  }

  get state(): Keeping {
    return this.#state;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  #tell(change: Partial<Keeping>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener();
  }

  /** Tells news, after what was told before and is not dismissed yet. */
  tellNews(news: string): void {
    const before = this.#state.news;
    this.#tell({ news: before?.includes(news) ? before : [before, news].filter(Boolean).join(". ") });
  }

  #freshRecord({ title }: Book): BookRecord {
    const now = Date.now();
    return { id: newId(), title, changed: now, opened: now, revision: 0, place: FIRST_CELL };
  }

  /** Whether the open book holds work that is neither on the shelf nor in a file. */
  #atRisk(): boolean {
    const { book } = this.#store;
    const safe = this.#state.state !== "unsaved" && this.#written;
    return !safe && !sameWork(book, this.#kept) && !sameWork(book, this.#copied);
  }

  readonly #notice = (): void => {
    const { book } = this.#store;
    if (this.#state.copied?.changed === false && !sameWork(book, this.#copied))
      this.#tell({ copied: { ...this.#state.copied, changed: true } });
    if (book === this.#kept || !this.bookcase.shelf) return;
    if (this.#state.state === "saved") this.#tell({ state: "saving" });
    if (this.#cost < QUICK) this.flush();
    else this.#timer ??= setTimeout(() => this.flush(), Math.min(LONGEST, TIMES * this.#cost));
  };

  /** Puts on the shelf what is not there yet. */
  flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#line = this.#line.then(() => this.#put());
    return this.#line;
  }

  async #put(): Promise<void> {
    const { book } = this.#store;
    const { shelf } = this.bookcase;
    if (book === this.#kept || !shelf) return;
    const { step } = this.#journal;
    const record: BookRecord = {
      ...this.#record,
      title: book.title,
      changed: Date.now(),
      place: this.#place,
      by: { tab: TAB, step },
    };
    let revision: number | null;
    try {
      const begun = performance.now();
      const text = writeBook(book);
      this.#cost = performance.now() - begun;
      revision = await shelf.keep(record, text);
    } catch (fault) {
      const trouble = `this book could not be saved in the browser (${reasonOf(fault)}): save it to a file`;
      return this.#tell({ trouble, state: "unsaved" });
    }
    if (revision === null) return (await this.#join(book)) ? this.#put() : this.#part();
    this.#record = { ...record, revision };
    this.#kept = book;
    this.#journal.kept(book, step, revision, this.#store.book);
    for (const { id, tab } of this.#taken.splice(0)) dropWritten(id, tab);
    this.#tell({ state: this.#store.book === book ? "saved" : "saving", trouble: null });
    // Asked when there is work of someone's to keep.
    if (revision > 1) askToKeepBooks();
  }

  /**
   * Another tab has put the book on the shelf. Where one of the two has only found lays since, both go
   * on with the same book, and no copy is made; false when both have changed it.
   */
  async #join(mine: Book): Promise<boolean> {
    const found = await this.bookcase.shelf?.read(this.#record.id);
    const reading = found ? readBook(found.text) : null;
    if (!found || !reading || "reason" in reading || !this.#kept) return false;
    const { revision } = found.record;
    if (withoutLays(reading.book) === withoutLays(this.#kept)) {
      this.#record = { ...this.#record, revision };
      this.#kept = reading.book;
      this.#journal.kept(reading.book, this.#journal.step, revision, this.#store.book);
      this.#store.takeLays(reading.book.lays);
      return true;
    }
    if (!sameWork(mine, this.#kept)) return false;
    this.#kept = mine;
    // Later: what is going on now has to come to its end before another state is opened.
    setTimeout(() => this.open(found.record.id));
    return true;
  }

  /** Another tab has kept changes of this book: what was changed here becomes a book of its own. */
  #part(): void {
    const { title } = this.#store.book;
    const own = titled(title, "second copy");
    this.#taken.push({ id: this.#record.id, tab: TAB });
    this.#record = this.#freshRecord({ ...this.#store.book, title: own });
    this.#journal.begin(this.#record.id, null, 0);
    this.#hold();
    this.#tell({ id: this.#record.id, copied: null });
    this.tellNews(
      `“${title}” was changed in another tab; your changes here are saved as a separate book, “${own}”`,
    );
    this.#store.run(retitle(own));
  }

  #hold(): void {
    const { id } = this.#record;
    if (this.#holding === id) return;
    this.#letGo();
    this.#holding = id;
    remember("sessionStorage", "ellwand.open", id);
    this.#letGo = holdBook(id, (free) => {
      const waited = free && this.#state.elsewhere;
      if (this.#state.elsewhere === free) this.#tell({ elsewhere: !free });
      if (free) this.#catchUp(id, waited).catch(() => {});
    });
  }

  /**
   * No other tab has the book: goes on from what one that was closed kept, if nothing was changed here.
   * A tab closed just before may still have been alive when its journal was looked for.
   */
  async #catchUp(id: string, waited: boolean): Promise<void> {
    await this.#opening;
    await this.#line;
    if (!waited && !writtenOf(id).some(({ tab }) => tab !== TAB)) return;
    const kept = await this.bookcase.shelf?.read(id);
    if (id !== this.#record.id || !kept) return;
    const moved = kept.record.revision !== this.#record.revision;
    const left = moved ? [] : await unkeptOf(kept);
    if ((moved || left.length > 0) && this.#store.book === this.#kept) await this.open(id);
  }

  /**
   * Opens a kept book, with what closed tabs had not put on the shelf any more. The reason why not
   * when it can't be opened: then the open book stays open, and the other stays on the shelf as it is.
   */
  async open(id: string): Promise<string | null> {
    const opening = this.#open(id).catch(reasonOf);
    this.#opening = opening;
    const reason = await opening;
    this.bookcase.note(id, reason);
    if (reason !== null) endOpening();
    return reason;
  }

  async #open(id: string): Promise<string | null> {
    const found = await this.bookcase.shelf?.read(id);
    if (!found) return "this book is no longer in this browser";
    const reading = readBook(found.text);
    if ("reason" in reading) return reading.reason;
    const unkept = await unkeptOf(found);
    // What a page hung on while it took it up is put aside instead.
    const takesUp = hungAt(id, await tabsAlive()) !== "journal";
    await this.#leave(id);
    beginOpening(id, "book");
    const place = recallPlace(id) ?? found.record.place;
    this.#show({ ...found.record, opened: Date.now() }, reading.book, place, reading.book);
    try {
      await this.bookcase.shelf?.opened(id, this.#record.opened);
      if (unkept.length > 0) beginOpening(id, "journal");
      for (const one of unkept) await this.#takeUp(one, takesUp ? reading.book : null);
    } catch (fault) {
      this.#tell({ trouble: `the last changes of this book could not be restored (${reasonOf(fault)})` });
    }
    return null;
  }

  /**
   * Takes up what a closed tab had not put on the shelf any more, where the open book is still `base`,
   * the book as it was read from there; what does not fit becomes a book of its own.
   */
  async #takeUp({ tab, book, written, fits }: Unkept, base: Book | null): Promise<void> {
    const { id, title } = this.#record;
    if (book && fits && this.#store.book === base) {
      const refusal = this.#store.run({ label: "restore the last changes", edit: () => book });
      if (refusal === null) {
        this.#taken.push({ id, tab });
        return this.flush();
      }
    }
    const own = titled(title, "with the last changes");
    await this.bookcase.put(own, book ? writeBook({ ...book, title: own }) : written);
    dropWritten(id, tab);
    this.tellNews(`The last changes of “${title}” are saved as a separate book, “${own}”`);
  }

  /** Before another book is opened. What can't be saved in the browser is saved to a file. */
  async #leave(id: string | null): Promise<void> {
    if (id !== this.#record.id) this.#tell({ news: null });
    await this.flush();
    if (!this.#atRisk()) return;
    const { book } = this.#store;
    this.tellNews(
      `“${book.title}” could not be saved in this browser; a copy is in the file ${saveFile(book)}`,
    );
  }

  #show(record: BookRecord, book: Book, place: Place, kept: Book | null): void {
    const before = { record: this.#record, kept: this.#kept };
    this.#record = record;
    this.#kept = this.bookcase.shelf ? kept : book;
    this.#journal.begin(record.id, kept, record.revision);
    if (this.#store.open(book) !== null) {
      this.#record = before.record;
      this.#kept = before.kept;
      this.#journal.begin(before.record.id, before.kept, before.record.revision);
      throw new Error("a part of it could not be calculated");
    }
    this.#place = place.page < book.pages.length ? place : FIRST_CELL;
    this.#copied = null;
    const { copied } = record;
    this.#tell({
      id: record.id,
      opening: this.#state.opening + 1,
      place: this.#place,
      state: !this.bookcase.shelf ? "unsaved" : kept ? "saved" : "saving",
      copied: copied ? { at: copied.at, changed: copied.revision !== record.revision } : null,
    });
    this.#hold();
  }

  /** Opens a book that is not on the shelf yet, and puts it there. */
  async add(book: Book): Promise<void> {
    await this.#leave(null);
    this.#show(this.#freshRecord(book), book, FIRST_CELL, null);
    await this.flush();
  }

  /** Saves the open book to a file; gives the file's name. */
  saveCopy(): string {
    const { book } = this.#store;
    const name = saveFile(book);
    this.#copied = book;
    this.#tell({ copied: { at: Date.now(), changed: false } });
    this.flush()
      .then(() => this.bookcase.copied([this.#record.id]))
      .catch(() => {});
    return name;
  }

  /** Saves every book to one file; gives the file's name and how many books are in it. */
  async saveAll(): Promise<{ name: string; count: number }> {
    await this.flush();
    const { text, ids } = await this.bookcase.everything();
    const name = saveText(text, `ellwand-books-${new Date().toISOString().slice(0, 10)}.json`);
    await this.bookcase.copied(ids);
    if (this.#store.book === this.#kept && ids.includes(this.#record.id)) {
      this.#copied = this.#store.book;
      this.#tell({ copied: { at: Date.now(), changed: false } });
    }
    return { name, count: ids.length };
  }

  /** Notes which cell is chosen. */
  at(place: Place): void {
    this.#place = place;
  }

  dismiss(): void {
    this.#tell({ news: null, trouble: null });
  }

  readonly #closing = (event: Event): void => {
    if (event.type === "visibilitychange" && document.visibilityState === "visible") return;
    rememberPlace(this.#record.id, this.#place);
    // What the engine did not accept need not be written down.
    if (this.#store.book === this.#kept) this.#journal.clear();
    this.flush();
  };
}
