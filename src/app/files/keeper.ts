/**
 * Keeps the open book in the browser: shortly after every change, at once when the page is being
 * closed, and never over what another tab has kept meanwhile.
 */
import type { Place } from "../../book/address.ts";
import { readBook } from "../../book/read.ts";
import { type Book, blankBook } from "../../book/shape.ts";
import { writeBook } from "../../book/write.ts";
import { retitle } from "../../store/commands.ts";
import type { Store } from "../../store/store.ts";
import { holdBook } from "./hold.ts";
import type { Shelf, Spine } from "./shelf.ts";
import { dropSlip, readSlip, type Slip, writeSlip } from "./slip.ts";

/** How long a change may wait before it is kept, in milliseconds. */
const SOON = 150;

export interface Keeping {
  readonly id: string;
  /** Goes up by one when another book is opened. */
  readonly opening: number;
  /** The cell that was chosen when the book was last open. */
  readonly place: Place;
  /** True while changes are not on the shelf yet. */
  readonly waiting: boolean;
  /** True while another tab has the book open too. */
  readonly elsewhere: boolean;
  /** Why nothing can be kept in this browser, in a sentence. */
  readonly trouble: string | null;
  /** Something that happened to the book without being asked for. */
  readonly news: string | null;
}

const FIRST_CELL: Place = { page: 0, row: 0, column: 0 };
const newId = (): string => `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 10)}`;

export class Keeper {
  readonly #store: Store;
  readonly #shelf: Shelf | null;
  #spine: Spine;
  /** The book as it is on the shelf. */
  #kept: Book | null = null;
  #place: Place = FIRST_CELL;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #line: Promise<void> = Promise.resolve();
  #letGo: () => void = () => {};
  #holding: string | null = null;
  #state: Keeping;
  readonly #listeners = new Set<() => void>();

  constructor(store: Store, shelf: Shelf | null, trouble: string | null = null) {
    this.#store = store;
    this.#shelf = shelf;
    this.#spine = this.#freshSpine(store.book);
    // What the store begins with is no one's work.
    this.#kept = store.book;
    this.#state = {
      id: this.#spine.id,
      opening: 0,
      place: FIRST_CELL,
      waiting: false,
      elsewhere: false,
      trouble,
      news: null,
    };
    store.subscribe(this.#notice);
    addEventListener("pagehide", this.#closing);
    document.addEventListener("visibilitychange", this.#closing);
    addEventListener("beforeunload", (event) => {
      const kept = this.#shelf && this.#state.trouble === null;
      if (!kept && this.#store.book !== this.#kept) event.preventDefault();
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

  #freshSpine({ title }: Book): Spine {
    const now = Date.now();
    return { id: newId(), title, changed: now, opened: now, revision: 0, place: FIRST_CELL };
  }

  readonly #notice = (): void => {
    if (this.#store.book === this.#kept || !this.#shelf) return;
    if (!this.#state.waiting) this.#tell({ waiting: true });
    this.#timer ??= setTimeout(() => this.flush(), SOON);
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
    if (book === this.#kept || !this.#shelf) return;
    const { title } = book;
    const spine = {
      ...this.#spine,
      title,
      changed: Date.now(),
      revision: this.#spine.revision + 1,
      place: this.#place,
    };
    try {
      if (!(await this.#shelf.keep(spine, writeBook(book)))) return this.#part();
    } catch (reason) {
      const why = reason instanceof Error ? reason.message : String(reason);
      return this.#tell({
        trouble: `this book could not be kept in the browser (${why}): save it to a file`,
      });
    }
    this.#spine = spine;
    this.#kept = book;
    const waiting = this.#store.book !== book;
    if (!waiting) dropSlip(spine.id);
    this.#tell({ waiting, trouble: null });
  }

  /** Another tab has kept changes of this book: what was changed here becomes a book of its own. */
  #part(): void {
    const { title } = this.#store.book;
    const own = `${title.slice(0, 180)}, second copy`;
    dropSlip(this.#spine.id);
    this.#spine = this.#freshSpine({ ...this.#store.book, title: own });
    this.#hold();
    this.#tell({
      id: this.#spine.id,
      news: `“${title}” was changed in another tab; what you changed here is kept beside it as “${own}”`,
    });
    this.#store.run(retitle(own));
  }

  #hold(): void {
    const { id } = this.#spine;
    if (this.#holding === id) return;
    this.#letGo();
    this.#holding = id;
    sessionStorage.setItem("ellwand.open", id);
    this.#letGo = holdBook(id, (free) => {
      if (this.#state.elsewhere === !free) return;
      this.#tell({ elsewhere: !free });
      if (free) this.#catchUp(id);
    });
  }

  /** The other tab is closed: goes on from what it kept, if nothing was changed here. */
  async #catchUp(id: string): Promise<void> {
    await this.#line;
    const kept = await this.#shelf?.read(id);
    if (id !== this.#spine.id || !kept || kept.spine.revision === this.#spine.revision) return;
    if (this.#store.book === this.#kept) await this.open(id);
  }

  /** Opens a kept book; the reason why not when it can't be read. The open book stays open then. */
  async open(id: string): Promise<string | null> {
    const found = await this.#shelf?.read(id);
    if (!found) return "this book is no longer kept in this browser";
    let reading = readBook(found.text);
    let news: string | null = null;
    if ("reason" in reading) {
      const { reason } = reading;
      reading = readBook(found.before);
      if ("reason" in reading) return reason;
      news = `what was kept last could not be read (${reason}); this is the book as it was opened before`;
    }
    const { book } = reading;
    await this.flush();
    this.#spine = { ...found.spine, opened: Date.now() };
    const slip = readSlip(id);
    this.#show(book, slip?.place ?? found.spine.place, book, news);
    await this.#shelf?.opened(id, this.#spine.opened, news === null);
    if (slip) await this.#takeUp(slip, found.text);
    return null;
  }

  /** Takes up changes that a closing page could not put on the shelf any more. */
  async #takeUp(slip: Slip, text: string): Promise<void> {
    const { id, revision } = this.#spine;
    const reading = slip.text === null || slip.text === text ? null : readBook(slip.text);
    if (!reading || "reason" in reading) return dropSlip(id);
    if (slip.revision < revision) this.#spine = { ...this.#spine, revision: slip.revision };
    this.#store.run({ label: "take up the last changes", edit: () => reading.book });
    await this.flush();
  }

  #show(book: Book, place: Place, kept: Book | null, news: string | null = null): void {
    this.#kept = this.#shelf ? kept : book;
    const fits = place.page < book.pages.length;
    this.#place = fits ? place : FIRST_CELL;
    const { opening } = this.#state;
    this.#tell({ id: this.#spine.id, opening: opening + 1, place: this.#place, waiting: false, news });
    this.#hold();
    this.#store.open(book);
  }

  /** Opens a book that is not on the shelf yet, and puts it there. */
  async add(book: Book): Promise<void> {
    await this.flush();
    this.#spine = this.#freshSpine(book);
    this.#show(book, FIRST_CELL, null);
    await this.flush();
  }

  /** Takes a book off the shelf for good. In place of the open one, the next or a blank one is opened. */
  async remove(id: string): Promise<void> {
    await this.#line;
    await this.#shelf?.remove(id);
    dropSlip(id);
    if (id !== this.#spine.id) return;
    this.#kept = this.#store.book;
    for (const next of await this.list()) if ((await this.open(next.id)) === null) return;
    const { unit, mark } = this.#store.book;
    await this.add(blankBook("A new book", unit, mark));
  }

  async list(): Promise<Spine[]> {
    return (await this.#shelf?.list()) ?? [];
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
    const { book } = this.#store;
    const { id, revision } = this.#spine;
    if (!this.#shelf) return;
    writeSlip(id, { revision, text: book === this.#kept ? null : writeBook(book), place: this.#place });
    this.flush();
  };
}
