/**
 * The books kept in this browser. A book's text and what the list says of it change in one
 * transaction, so that a crash leaves either the old book or the new one. Every answer has a time
 * limit; what fails throws an Error whose message is a sentence without a full stop.
 */

import { type DBSchema, deleteDB, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import { phrase } from "../../../functions/phrase.ts";
import type { Place } from "../../book/address.ts";
import { inTime, reasonOf } from "../faults/in-time.ts";

/** What the list of books says of one book. */
export interface BookRecord {
  readonly id: string;
  readonly title: string;
  /** When it was last changed and last opened, in milliseconds since 1970. */
  readonly changed: number;
  readonly opened: number;
  /** Goes up by one with every change, so that one tab notices what another has kept. */
  readonly revision: number;
  /** The cell that was chosen last. */
  readonly place: Place;
  /** The tab that kept this revision, and the step of that tab's journal which is in it. */
  readonly by?: { readonly tab: string; readonly step: number };
  /** When the book was put in the bin; absent while it is not there. */
  readonly binned?: number;
  /** When a copy was last saved to a file, of which revision, and the file's name where the page knows it. */
  readonly copied?: { readonly at: number; readonly revision: number; readonly file?: string };
}

/** A text as it is, or where it is long the numbers of its parts: only parts that change are written again. */
type Kept = string | readonly number[];

/** The text of one book. */
interface BookText {
  readonly id: string;
  readonly text: Kept;
  /** The text as it was when the book was last opened and could be read. */
  readonly before: Kept;
}

/** A part of a long text. No other part of the book ever gets its number. */
interface Part {
  readonly id: string;
  readonly number: number;
  readonly text: string;
}

/** The names of the stores are those of databases that browsers have already: they stay. */
interface Shelves extends DBSchema {
  spines: { key: string; value: BookRecord };
  leaves: { key: string; value: BookText };
  parts: { key: [string, number]; value: Part };
}

type Writing = IDBPTransaction<Shelves, ("spines" | "leaves" | "parts")[], "readwrite">;

/** The longest text that is kept as it is, in characters. */
const MOST_WHOLE = 200_000;
/** Stands for a part that the browser has lost: such a text is no book, rather than a book without some rows. */
const MISSING = `\n(${phrase`a part of this text is missing`})\n`;
/** Part `i` of revision `r` has the number `r * PARTS + i`. */
const PARTS = 1_000_000;

const ofBook = (id: string): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Number.POSITIVE_INFINITY]);
const numbersOf = (...texts: (Kept | undefined)[]): number[] =>
  texts.flatMap((text) => (typeof text === "object" ? text : []));

/** How long the database may take to open, and to answer, in milliseconds. */
const OPENING = 6_000;
const ANSWERING = 10_000;

/** The name of the error where the browser has no database at all. */
const NONE = "NoDatabaseError";

function whyClosed(fault: unknown): string {
  const name = fault instanceof Error ? fault.name : "";
  if (name === NONE) return phrase`this browser has no database to keep books in`;
  if (name === "VersionError")
    return phrase`a newer Ellwand keeps books in this browser, and this older one leaves them as they are; open the newer Ellwand, or reload this page if it has been updated`;
  if (name === "SecurityError")
    return phrase`the browser does not let this page store anything; it may be in private mode, or block the data of this site`;
  return phrase`the browser's database could not be opened: ${reasonOf(fault)}`;
}

export class Shelf {
  readonly #db: IDBPDatabase<Shelves>;
  /** Why the database is closed for good. */
  #closed: string | null = null;
  /** The long text that was kept last, in its parts, and their numbers. */
  #last: {
    readonly id: string;
    readonly revision: number;
    readonly parts: readonly string[];
    readonly numbers: readonly number[];
  } | null = null;

  private constructor(db: IDBPDatabase<Shelves>) {
    this.#db = db;
  }

  static async open(name = "ellwand"): Promise<Shelf> {
    let shelf: Shelf | null = null;
    try {
      if (!globalThis.indexedDB) throw new DOMException("no database", NONE);
      const db = await Shelf.#connect(name, (why) => {
        if (shelf) shelf.#closed = why;
      });
      shelf = new Shelf(db);
      return shelf;
    } catch (fault) {
      throw new Error(whyClosed(fault));
    }
  }

  static async #connect(name: string, lost: (why: string) => void): Promise<IDBPDatabase<Shelves>> {
    const opening = new Promise<IDBPDatabase<Shelves>>((resolve, reject) => {
      openDB<Shelves>(name, 2, {
        upgrade(db, old) {
          if (old < 1) {
            db.createObjectStore("spines", { keyPath: "id" });
            db.createObjectStore("leaves", { keyPath: "id" });
          }
          if (old < 2) db.createObjectStore("parts", { keyPath: ["id", "number"] });
        },
        blocked: () => reject(new Error(phrase`another tab of Ellwand is using it; close the other tabs`)),
        blocking(_now, _next, event) {
          (event.target as IDBDatabase).close();
          lost(phrase`a newer Ellwand was opened in another tab; reload this page`);
        },
        terminated: () => lost(phrase`the browser closed its database; reload this page`),
      }).then(resolve, reject);
    });
    const db = await inTime(opening, OPENING, (late) => late.close());
    if (db.objectStoreNames.length > 0) return db;
    // A database without a single shelf holds nothing; it is made anew.
    db.close();
    await inTime(deleteDB(name), OPENING);
    return Shelf.#connect(name, lost);
  }

  async #ask<T>(work: () => Promise<T>): Promise<T> {
    if (this.#closed) throw new Error(this.#closed);
    try {
      return await inTime(work(), ANSWERING);
    } catch (fault) {
      throw new Error(this.#closed ?? phrase`the browser's database failed: ${reasonOf(fault)}`, {
        cause: fault,
      });
    }
  }

  /** Every book, those in the bin too; the book opened last comes first. */
  list(): Promise<BookRecord[]> {
    return this.#ask(async () => {
      const records = await this.#db.getAll("spines");
      return records.sort((a, b) => b.opened - a.opened);
    });
  }

  read(id: string): Promise<{ record: BookRecord; text: string; before: string } | null> {
    return this.#ask(async () => {
      const tx = this.#db.transaction(["spines", "leaves", "parts"]);
      const [record, bookText, parts] = await Promise.all([
        tx.objectStore("spines").get(id),
        tx.objectStore("leaves").get(id),
        tx.objectStore("parts").getAll(ofBook(id)),
      ]);
      const found = new Map(parts.map(({ number, text }) => [number, text]));
      const whole = (text: Kept) =>
        typeof text === "string" ? text : text.map((number) => found.get(number) ?? MISSING).join("");
      return record && bookText
        ? { record, text: whole(bookText.text), before: whole(bookText.before) }
        : null;
    });
  }

  /**
   * Keeps a book's text, given whole or in parts, and gives its new revision, unless another tab has kept the
   * book since the revision before: then null, and nothing is changed. What this tab kept itself it may replace,
   * even where the answer to that came too late.
   */
  keep(record: BookRecord, text: string | readonly string[]): Promise<number | null> {
    return this.#ask(async () => {
      const tx: Writing = this.#db.transaction(["spines", "leaves", "parts"], "readwrite", {
        durability: "strict",
      });
      const records = tx.objectStore("spines");
      const texts = tx.objectStore("leaves");
      const [now, old] = await Promise.all([records.get(record.id), texts.get(record.id)]);
      const own = now?.by !== undefined && now.by.tab === record.by?.tab;
      const fits = !now || own || now.revision === record.revision;
      const revision = Math.max(record.revision, now?.revision ?? 0) + 1;
      if (fits) {
        const copied = now?.copied ? { copied: now.copied } : {};
        await records.put({ ...record, ...copied, revision });
        await this.#keepText(tx, { id: record.id, was: now?.revision ?? 0, revision }, [text].flat(), old);
      }
      await tx.done;
      return fits ? revision : null;
    });
  }

  /** A long text is kept part by part, each in a task of its own, and parts that are there already stay. */
  async #keepText(
    tx: Writing,
    { id, was, revision }: { id: string; was: number; revision: number },
    parts: readonly string[],
    old: BookText | undefined,
  ): Promise<void> {
    const store = tx.objectStore("parts");
    const put = async (text: string, index: number): Promise<number> => {
      const number = revision * PARTS + index;
      await store.put({ id, number, text });
      return number;
    };
    let kept: Kept = "";
    if (parts.reduce((sum, { length }) => sum + length, 0) <= MOST_WHOLE) kept = parts.join("");
    else {
      const last = this.#last?.id === id && this.#last.revision === was ? this.#last : null;
      const longer = parts.length - (last?.parts.length ?? 0);
      const numbers: number[] = [];
      for (const [i, part] of parts.entries()) {
        // Where parts were put in or taken out, those behind them are found again from the end.
        const at = last?.parts[i] === part ? i : i - longer;
        numbers.push(last?.parts[at] === part ? last.numbers[at]! : await put(part, i));
      }
      kept = numbers;
      this.#last = { id, revision, parts, numbers };
    }
    let before = old?.before ?? kept;
    // A long text beside the parts would be written with each of them.
    if (typeof before === "string" && before.length > MOST_WHOLE) before = [await put(before, parts.length)];
    await tx.objectStore("leaves").put({ id, text: kept, before });
    await this.#sweep(tx, id, numbersOf(old?.text, old?.before), numbersOf(kept, before));
  }

  /** Deletes the parts that no text has any more. */
  async #sweep(tx: Writing, id: string, had: readonly number[], has: readonly number[]): Promise<void> {
    const needed = new Set(has);
    const gone = had.filter((number) => !needed.has(number));
    await Promise.all(gone.map((number) => tx.objectStore("parts").delete([id, number])));
  }

  /** Changes what the list says of a book; the book itself stays as it is. */
  note(id: string, change: (record: BookRecord) => BookRecord): Promise<void> {
    return this.#ask(async () => {
      const tx = this.#db.transaction("spines", "readwrite");
      const record = await tx.store.get(id);
      if (record) await tx.store.put(change(record));
      await tx.done;
    });
  }

  /** Notes that a book was opened and could be read: its text becomes the one before. */
  opened(id: string, opened: number): Promise<void> {
    return this.#ask(async () => {
      const tx: Writing = this.#db.transaction(["spines", "leaves", "parts"], "readwrite");
      const record = await tx.objectStore("spines").get(id);
      if (record) await tx.objectStore("spines").put({ ...record, opened });
      const bookText = await tx.objectStore("leaves").get(id);
      if (bookText) {
        const { text, before } = bookText;
        await tx.objectStore("leaves").put({ id, text, before: text });
        await this.#sweep(tx, id, numbersOf(before), numbersOf(text));
      }
      await tx.done;
    });
  }

  remove(id: string): Promise<void> {
    return this.#ask(async () => {
      const tx = this.#db.transaction(["spines", "leaves", "parts"], "readwrite");
      await Promise.all([
        tx.objectStore("spines").delete(id),
        tx.objectStore("leaves").delete(id),
        tx.objectStore("parts").delete(ofBook(id)),
        tx.done,
      ]);
    });
  }
}
