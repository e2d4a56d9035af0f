/** Opens books in place of the open one, and takes up what closed tabs had not put on the shelf. */
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { writeBook } from "../../book/write.ts";
import type { Past, Store } from "../../store/store.ts";
import { functionsOf } from "../all-functions.ts";
import { reasonOf } from "../faults/in-time.ts";
import { beginOpening, endOpening, hungAt } from "./attempt.ts";
import { saveFile } from "./disk.ts";
import { holdBook } from "./hold.ts";
import { dropWritten, writtenOf } from "./journal.ts";
import type { KeepingState } from "./keeping.ts";
import { freshRecord, type Library } from "./library.ts";
import { FIRST_CELL, recallPlace } from "./place.ts";
import { type Saver, withoutLays } from "./saver.ts";
import type { BookRecord } from "./shelf.ts";
import { recallSteps } from "./steps.ts";
import { remember } from "./storage.ts";
import { TAB, tabsAlive } from "./tab.ts";
import { lastChangesOf, type Unkept, unkeptOf } from "./unkept.ts";

/** Why a book was not opened whose opening its maker stopped. */
export const stopped = (): string => phrase`it was stopped`;

/** Shorter texts hold too few formulas for their book to take long, in characters. */
const LONG = 100_000;

export class Opener {
  readonly #store: Store;
  readonly #bookcase: Library;
  readonly #keeping: KeepingState;
  readonly #saver: Saver;
  /** The opening of a book that is going on. */
  #opening: Promise<unknown> = Promise.resolve();
  #letGo: () => void = () => {};
  #holding: string | null = null;

  constructor(store: Store, bookcase: Library, keeping: KeepingState, saver: Saver) {
    this.#store = store;
    this.#bookcase = bookcase;
    this.#keeping = keeping;
    this.#saver = saver;
  }

  /** Holds the open book for this tab. */
  hold(): void {
    const { id } = this.#saver.record;
    if (this.#holding === id) return;
    this.#letGo();
    this.#holding = id;
    remember("sessionStorage", "ellwand.open", id);
    this.#letGo = holdBook(id, (free) => {
      const waited = free && this.#keeping.now.elsewhere;
      if (this.#keeping.now.elsewhere === free) this.#keeping.change({ elsewhere: !free });
      if (free) this.#catchUp(id, waited).catch(() => {});
    });
  }

  /**
   * No other tab has the book: goes on from what one that was closed kept, if nothing was changed here.
   * A tab closed just before may still have been alive when its journal was looked for.
   */
  async #catchUp(id: string, waited: boolean): Promise<void> {
    await this.#opening;
    await this.#saver.settled();
    if (!waited && !writtenOf(id).some(({ tab }) => tab !== TAB)) return;
    const kept = await this.#bookcase.shelf?.read(id);
    if (id !== this.#saver.record.id || !kept) return;
    const moved = kept.record.revision !== this.#saver.record.revision;
    const left = moved ? [] : await unkeptOf(kept);
    if ((moved || left.length > 0) && this.#store.book === this.#saver.kept) await this.open(id);
  }

  /**
   * Opens a kept book, with what closed tabs had not put on the shelf any more. The reason why not
   * when it can't be opened: then the open book stays open, and the other stays on the shelf as it is.
   */
  async open(id: string): Promise<string | null> {
    const opening = this.#open(id).catch(reasonOf);
    this.#opening = opening;
    const reason = await opening;
    if (reason !== stopped()) this.#bookcase.note(id, reason);
    if (reason !== null) endOpening();
    return reason;
  }

  async #open(id: string): Promise<string | null> {
    const found = await this.#bookcase.shelf?.read(id);
    if (!found) return phrase`this book is no longer in this browser`;
    const reading = readBook(found.text);
    if ("reason" in reading) return reading.reason;
    const past = await recallSteps(id, found.record.by, reading.book);
    const unkept = await unkeptOf(found);
    await functionsOf(reading.book, ...unkept.map(({ book }) => book), ...past.map(({ book }) => book));
    // What a page hung on while it took it up is put aside instead.
    const takesUp = hungAt(id, await tabsAlive()) !== "journal";
    beginOpening(id, "book");
    if (!(await this.#prepare(reading.book, found.text))) return stopped();
    await this.#leave(id);
    const place = recallPlace(id) ?? found.record.place;
    this.#show({ ...found.record, opened: Date.now() }, reading.book, place, reading.book, past);
    // A full disk refuses even this: the order of the list of books waits, the last changes do not.
    await this.#bookcase.shelf?.opened(id, this.#saver.record.opened).catch(() => {});
    try {
      if (unkept.length > 0) beginOpening(id, "journal");
      for (const one of unkept) await this.#takeUp(one, takesUp ? reading.book : null);
    } catch (fault) {
      this.#keeping.change({
        trouble: phrase`the last changes of this book could not be restored (${reasonOf(fault)})`,
      });
    }
    return null;
  }

  /**
   * Takes up what a closed tab had not put on the shelf any more, where the open book is still `base`,
   * the book as it was read from there; what does not fit becomes a book of its own.
   */
  async #takeUp({ tab, book, written, fits }: Unkept, base: Book | null): Promise<void> {
    const { id, title } = this.#saver.record;
    // What another closed tab had restored, and could not put on the shelf either.
    if (book && fits && base && withoutLays(this.#store.book) === withoutLays(book)) {
      this.#saver.taken.push({ id, tab });
      return;
    }
    if (book && fits && this.#store.book === base) {
      const refusal = this.#store.run({ label: phrase`restore the last changes`, edit: () => book });
      if (refusal === null) {
        this.#saver.taken.push({ id, tab });
        return this.#saver.flush();
      }
    }
    const own = lastChangesOf(title);
    await this.#bookcase.put(own, book ? writeBook({ ...book, title: own }) : written);
    dropWritten(id, tab);
    this.#keeping.addNews(phrase`The last changes of “${title}” are saved as a separate book, “${own}”`);
  }

  /** Has the engine prepare for a book that takes long; false when that was stopped. The start loads what it needs for this only where the book's text may be long enough. */
  async #prepare(book: Book, text = ""): Promise<boolean> {
    const isStart = this.#keeping.now.opening === 0;
    if (isStart && text.length < LONG) return true;
    const { prepared } = await import("../progress/stoppable.ts");
    const hide = isStart ? (await import("../progress/at-start.tsx")).showInFrame() : () => {};
    try {
      return await prepared(phrase`Opening “${book.title}”`, this.#store, book, true);
    } finally {
      hide();
    }
  }

  /** Before another book is opened. What can't be saved in the browser is saved to a file. */
  async #leave(id: string | null): Promise<void> {
    this.#store.beforeLeaving?.();
    if (id !== this.#saver.record.id) this.#keeping.change({ news: null });
    await this.#saver.flush();
    if (!this.#saver.atRisk()) return;
    const { book } = this.#store;
    this.#keeping.addNews(
      phrase`“${book.title}” could not be saved in this browser; a copy is in the file ${saveFile(book)}`,
    );
  }

  #show(record: BookRecord, book: Book, place: Place, kept: Book | null, past: readonly Past[] = []): void {
    const before = { record: this.#saver.record, kept: this.#saver.kept };
    this.#saver.record = record;
    this.#saver.kept = this.#bookcase.shelf ? kept : book;
    this.#saver.journal.begin(record.id, kept, record.revision, record.by);
    if (this.#store.open(book, past) !== null) {
      this.#saver.record = before.record;
      this.#saver.kept = before.kept;
      this.#saver.journal.begin(before.record.id, before.kept, before.record.revision, before.record.by);
      throw new Error(phrase`a part of it could not be calculated`);
    }
    this.#saver.place = place.page < book.pages.length ? place : FIRST_CELL;
    const { copied } = record;
    const changed = copied?.revision !== record.revision;
    this.#saver.copied = changed ? null : kept;
    this.#keeping.change({
      id: record.id,
      opening: this.#keeping.now.opening + 1,
      place: this.#saver.place,
      state: !this.#bookcase.shelf ? "unsaved" : kept ? "saved" : "saving",
      keptAt: kept ? record.changed : null,
      copied: copied ? { ...copied, changed } : null,
    });
    this.hold();
  }

  /** Opens a book that is not on the shelf yet, and puts it there. */
  async add(book: Book): Promise<void> {
    await functionsOf(book);
    if (!(await this.#prepare(book))) throw new Error(stopped());
    await this.#leave(null);
    this.#show(freshRecord(book), book, FIRST_CELL, null);
    await this.#saver.flush();
  }
}
