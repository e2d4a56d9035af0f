/**
 * The open book: the book itself, the engine that follows it, and the history of commands.
 * It knows nothing of React; a screen subscribes and reads one revision number.
 */
import type { Book } from "../book/shape.ts";
import { Engine, type LayDesk } from "../engine/engine.ts";

/** A step from one book to the next, with a name for the history ("take out 2 rows"). */
export interface Command {
  readonly label: string;
  /** The next book, the same object when nothing changes, or why it can't be done. */
  readonly edit: (book: Book) => Book | { readonly refusal: string };
}

interface Past {
  readonly book: Book;
  readonly label: string;
}

/** Steps kept; the oldest go first. Books share what they have in common, so a step costs little. */
const MOST_STEPS = 500;

export class Store {
  readonly engine: Engine;
  #book: Book;
  #past: Past[] = [];
  #future: Past[] = [];
  #trying: Book | null = null;
  #revision = 0;
  readonly #listeners = new Set<() => void>();
  /**
   * Called with the book as it will be kept, before the engine works on it: what was typed can be
   * written down before work begins that may take long or fail. Not called for what is only tried.
   */
  beforeWork: ((next: Book) => void) | null = null;

  constructor(book: Book, desk: LayDesk) {
    this.#book = book;
    this.engine = new Engine(book, desk);
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

  /** The label of the step that undo would take back, if there is one. */
  get undoable(): string | undefined {
    return this.#past.at(-1)?.label;
  }

  get redoable(): string | undefined {
    return this.#future.at(-1)?.label;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  #show(): void {
    this.engine.become(this.shown);
    this.#revision += 1;
    for (const listener of [...this.#listeners]) listener();
  }

  /** Runs a command as one undo step. Returns why it was refused, or null. */
  run(command: Command): string | null {
    const next = command.edit(this.#book);
    if ("refusal" in next) return next.refusal;
    if (next !== this.#book) this.beforeWork?.(next);
    this.#trying = null;
    if (next !== this.#book) {
      this.#past.push({ book: this.#book, label: command.label });
      if (this.#past.length > MOST_STEPS) this.#past.shift();
      this.#future = [];
      this.#book = next;
    }
    this.#show();
    return null;
  }

  undo(): void {
    this.#step(this.#past, this.#future);
  }

  redo(): void {
    this.#step(this.#future, this.#past);
  }

  #step(from: Past[], to: Past[]): void {
    const step = from.pop();
    if (!step) return;
    to.push({ book: this.#book, label: step.label });
    // Found lays are knowledge, not an edit: a step back does not forget them.
    this.#book = { ...step.book, lays: this.#book.lays };
    this.beforeWork?.(this.#book);
    this.#trying = null;
    this.#show();
  }

  /** Shows a book that is only tried out; null goes back to the one kept. No undo step. */
  try(book: Book | null): void {
    if (book === this.#trying) return;
    this.#trying = book;
    this.#show();
  }

  /** Opens another book; its history begins anew. */
  open(book: Book): void {
    this.#book = book;
    this.#past = [];
    this.#future = [];
    this.#trying = null;
    this.#show();
  }

  /** Keeps a lay that was found: no undo step, every cell that asked this question answers with it. */
  keepLay(hash: string, lay: Book["lays"][string]): void {
    const keep = (book: Book): Book => ({ ...book, lays: { ...book.lays, [hash]: lay } });
    this.#book = keep(this.#book);
    this.beforeWork?.(this.#book);
    if (this.#trying) this.#trying = keep(this.#trying);
    this.#show();
  }
}
