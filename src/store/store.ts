/**
 * The open book: the book itself, the engine that follows it, and the history of commands.
 * It knows nothing of React; a screen subscribes and reads one revision number.
 */
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { bothLays, withLay } from "../book/lays.ts";
import type { Book } from "../book/shape.ts";
import { Engine } from "../engine/engine.ts";
import { hashOf } from "../engine/laid.ts";
import { missingIn, notThereYet } from "../engine/late.ts";
import type { LayDesk } from "../engine/lay-desk.ts";

/** A step from one book to the next, with a name for the history ("delete 2 rows"). */
export interface Command {
  readonly label: string;
  /** The next book, the same object when nothing changes, or why it can't be done. */
  readonly edit: (book: Book) => Book | { readonly refusal: string };
}

/** A step that undo can take back: the book before it, and its label. */
export interface Past {
  readonly book: Book;
  readonly label: string;
}

/** The refusal when the engine could not take a book; the former book stays. */
export const NOT_TAKEN = phrase`this change could not be calculated and was not made; the book is as it was before. Make the change in smaller steps`;

/** The most steps that are kept; the oldest are dropped first. Books share what they have in common, so a step costs little. */
const MOST_STEPS = 500;

export class Store {
  readonly engine: Engine;
  #book: Book;
  #past: Past[] = [];
  #future: Past[] = [];
  #trying: Book | null = null;
  #revision = 0;
  #openings = 0;
  readonly #listeners = new Set<() => void>();
  /**
   * Called with the book as it will be kept, before the engine works on it: what was typed can be
   * written down before the calculation begins, which may take long or fail. Not called for what is only tried.
   * Called once more with the former book when the engine can't take the new one.
   */
  beforeWork: ((next: Book) => void) | null = null;
  /** Called before another book takes the place of the open one: what is half typed goes into its own book. */
  beforeLeaving: (() => void) | null = null;
  /** Called with each step before it is taken: gives the next book, or throws so that the step is not taken. */
  onStep: ((before: Book, next: Book) => Book) | null = null;
  /** Called before a command, an undo or a redo: what is half typed can be kept while its place is still the same. */
  beforeStep: (() => void) | null = null;

  /** `make` is there for tests of what happens when an engine fails. */
  constructor(book: Book, desk: LayDesk, make = (one: Book): Engine => new Engine(one, desk)) {
    this.#book = book;
    this.engine = make(book);
  }

  /** The book as kept: what is being tried out is not in it. */
  get book(): Book {
    return this.#book;
  }

  /** The book on the screen: with what is being tried out. */
  get shown(): Book {
    return this.#trying ?? this.#book;
  }

  get trying(): boolean {
    return this.#trying !== null;
  }

  get revision(): number {
    return this.#revision;
  }

  /** How often another book was opened in place of the one before. */
  get openings(): number {
    return this.#openings;
  }

  /** The label of the step that undo would take back, if there is one. */
  get undoable(): string | undefined {
    return this.#past.at(-1)?.label;
  }

  /** The steps that undo can take back, the oldest first. */
  get past(): readonly Past[] {
    return this.#past;
  }

  /** The steps that redo can take again, the next one last: each with the book that it leads to. */
  get future(): readonly Past[] {
    return this.#future;
  }

  get redoable(): string | undefined {
    return this.#future.at(-1)?.label;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /**
   * Goes on with another book once the engine has accepted it: `book` is kept, `trying` is shown
   * in its place. Returns why the engine could not, or null; what was there before stands then.
   */
  #accept(
    book: Book,
    trying: Book | null,
    work = (): void => this.engine.become(trying ?? book),
  ): string | null {
    const missing = missingIn(trying ?? book);
    if (missing !== null) return notThereYet(missing);
    const accepted = attempt(work);
    if (accepted) {
      this.#book = book;
      this.#trying = trying;
      this.#revision += 1;
    } else attempt(() => this.engine.become(this.shown));
    return accepted ? null : NOT_TAKEN;
  }

  /** As `#accept`, for a book that is to be kept: it can be written down before it is calculated. */
  #keep(book: Book, trying: Book | null = null): string | null {
    const write = (one: Book) => attempt(() => this.beforeWork?.(one));
    const before = this.#book;
    if (book !== before) write(book);
    const fault = this.#accept(book, trying);
    if (fault && book !== before) write(before);
    return fault;
  }

  /** Calls every listener; what one of them throws is thrown again after all were called, for the page to show. */
  #notify(): void {
    for (const listener of [...this.#listeners]) {
      try {
        listener();
      } catch (fault) {
        setTimeout(() => {
          throw fault;
        });
      }
    }
  }

  /** Runs a command as one undo step. Returns why it was refused, or null. */
  run(command: Command): string | null {
    attempt(() => this.beforeStep?.());
    const before = this.#book;
    let next: ReturnType<Command["edit"]> = { refusal: NOT_TAKEN };
    attempt(() => {
      next = command.edit(before);
    });
    if ("refusal" in next) return next.refusal;
    if (next !== before && this.onStep) next = this.onStep(before, next);
    const fault = this.#keep(next);
    if (fault) return fault;
    if (next !== before) {
      this.#past.push({ book: before, label: command.label });
      if (this.#past.length > MOST_STEPS) this.#past.shift();
      this.#future = [];
    }
    this.#notify();
    return null;
  }

  /** Takes the last step back. Returns why it could not be, or null. */
  undo(): string | null {
    attempt(() => this.beforeStep?.());
    return this.#step(this.#past, this.#future);
  }

  /** Takes the step that was taken back again. Returns why it could not be, or null. */
  redo(): string | null {
    attempt(() => this.beforeStep?.());
    return this.#step(this.#future, this.#past);
  }

  #step(from: Past[], to: Past[]): string | null {
    const step = from.at(-1);
    if (!step) return null;
    const before = this.#book;
    // Found lays are knowledge, not an edit: a step back does not forget them.
    const same = { ...step.book, lays: before.lays };
    const next = this.onStep?.(before, same) ?? same;
    const fault = this.#keep(next);
    if (fault) return fault;
    from.pop();
    to.push({ book: before, label: step.label });
    this.#notify();
    return null;
  }

  /** Shows a book that is only tried out; null goes back to the one kept. No undo step. Returns why it can't be shown, or null. */
  try(book: Book | null): string | null {
    if (book === this.#trying) return null;
    const fault = this.#accept(this.#book, book);
    if (!fault) this.#notify();
    return fault;
  }

  /** Opens another book, with the steps that led to it where they are known. Returns why it can't be opened, or null; the former one stays open then. */
  open(book: Book, past: readonly Past[] = []): string | null {
    const fault = this.#accept(book, null, () => this.engine.open(book));
    if (fault) return fault;
    this.#past = [...past];
    this.#future = [];
    this.#openings += 1;
    this.#notify();
    return null;
  }

  /** Calculates cells again that took too long, with more time. Returns why it could not be, or null. */
  workAgain(places: readonly Place[]): string | null {
    // The book becomes a new object, for the engine too, because what is shown is remembered by the object of the book.
    const book = { ...this.#book };
    const trying = this.#trying && { ...this.#trying };
    const fault = this.#accept(book, trying, () => {
      this.engine.become(trying ?? book);
      this.engine.again(places);
    });
    if (!fault) this.#notify();
    return fault;
  }

  /** Adds lays that were found elsewhere for the same book; of two for one question its own stays, but one made by hand goes before one that was found. */
  takeLays(lays: Book["lays"]): void {
    const take = (book: Book): Book => ({ ...book, lays: bothLays(book.lays, lays) });
    if (!this.#keep(take(this.#book), this.#trying && take(this.#trying))) this.#notify();
  }

  /** Keeps a lay that was found, without an undo step; every cell that asked this question answers with it. */
  keepLay(hash: string, lay: Book["lays"][string]): void {
    const asked = () =>
      new Set(this.engine.laid().flatMap(({ lays }) => lays.map(({ question }) => hashOf(question))));
    const lays = withLay(this.#book.lays, hash, lay, asked);
    const keep = (book: Book): Book => ({ ...book, lays });
    if (!this.#keep(keep(this.#book), this.#trying && keep(this.#trying))) this.#notify();
  }
}

/** Whether an act came to its end without a throw. */
function attempt(act: () => void): boolean {
  try {
    act();
    return true;
  } catch {
    return false;
  }
}
