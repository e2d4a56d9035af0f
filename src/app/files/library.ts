/** All books kept in this browser: which of them can be read, the bin, and every book in one file. */
import { phrase, plural } from "../../../functions/phrase.ts";
import { writeBooks } from "../../book/books.ts";
import { readBook } from "../../book/read.ts";
import type { Book } from "../../book/shape.ts";
import { reasonOf } from "../faults/in-time.ts";
import { FIRST_CELL, forgetPlace } from "./place.ts";
import type { BookRecord, Shelf } from "./shelf.ts";
import { forgetSteps } from "./steps.ts";

export const newId = (): string => `${Date.now().toString(36)}${Math.random().toString(36).slice(2, 10)}`;

/** What the list of books says of a book that was never kept. */
export function freshRecord({ title }: Book): BookRecord {
  const now = Date.now();
  return { id: newId(), title, changed: now, opened: now, revision: 0, place: FIRST_CELL };
}

/** What the list of books shows of one. */
export interface Listed {
  readonly record: BookRecord;
  /** Why the book does not open; null when it can be read. */
  readonly fault: string | null;
  /** Whether an earlier state of a book that does not open can be read. */
  readonly earlier: boolean;
}

/** A title with words after it, within the length that a title may have. */
export const titled = (title: string, after: string): string => `${title.slice(0, 180)}, ${after}`;

export class Library {
  readonly shelf: Shelf | null;
  /** Why books did not open, by id: what reading alone can't tell. */
  readonly #faults = new Map<string, string>();

  constructor(shelf: Shelf | null) {
    this.shelf = shelf;
  }

  /** Notes why a book did not open, or with null that it did. */
  note(id: string, fault: string | null): void {
    if (fault === null) this.#faults.delete(id);
    else this.#faults.set(id, fault);
  }

  /** The books, those in the bin left out; the one opened last comes first. */
  async list(): Promise<BookRecord[]> {
    return ((await this.shelf?.list()) ?? []).filter(({ binned }) => binned === undefined);
  }

  /** The books in the bin, the one put there last first. */
  async bin(): Promise<BookRecord[]> {
    const records = ((await this.shelf?.list()) ?? []).filter(({ binned }) => binned !== undefined);
    return records.sort((a, b) => b.binned! - a.binned!);
  }

  /** Reads a book to see whether it would open. */
  async look(record: BookRecord): Promise<Listed> {
    try {
      const found = await this.shelf?.read(record.id);
      const reading = readBook(found?.text ?? "");
      const fault = "reason" in reading ? reading.reason : (this.#faults.get(record.id) ?? null);
      const before = fault === null ? undefined : found?.before;
      const earlier = before !== undefined && before !== found?.text && "book" in readBook(before);
      return { record, fault, earlier };
    } catch (fault) {
      return { record, fault: reasonOf(fault), earlier: false };
    }
  }

  /** A book as it is kept, readable or not. */
  async kept(id: string): Promise<{ readonly record: BookRecord; readonly text: string }> {
    const found = await this.shelf?.read(id);
    if (!found) throw new Error(phrase`this book is no longer in this browser`);
    return found;
  }

  /** The text of the state in which a book was last opened. */
  async earlier(id: string): Promise<string | null> {
    return (await this.shelf?.read(id))?.before ?? null;
  }

  /** Every book that is not in the bin, as one file, and how many are in it; `textsOf` gives the texts of one of them. */
  async everything(
    textsOf: (id: string) => Promise<readonly string[]>,
  ): Promise<{ text: string; ids: readonly string[]; count: number }> {
    const records = await this.list();
    const texts: string[] = [];
    for (const { id } of records) texts.push(...(await textsOf(id)));
    return { text: writeBooks(texts), ids: records.map(({ id }) => id), count: texts.length };
  }

  /** Puts a text on the shelf as a book of its own, readable or not. */
  async put(title: string, text: string): Promise<string> {
    if (!this.shelf) throw new Error(phrase`books cannot be saved in this browser at present`);
    const now = Date.now();
    const place = { page: 0, row: 0, column: 0 };
    const record = { id: newId(), title, changed: now, opened: 0, revision: 0, place };
    await this.shelf.keep(record, text);
    return record.id;
  }

  /** Puts the books of one file on the shelf; says in words how many there were. */
  async putAll(texts: readonly string[]): Promise<string> {
    let unreadable = 0;
    for (const text of texts) {
      const reading = readBook(text);
      if ("reason" in reading) unreadable += 1;
      await this.put("book" in reading ? reading.book.title : phrase`A book that can't be read`, text);
    }
    const many = phrase`${plural(texts.length, "a book", "# books")}`;
    const held = phrase`held ${many}, now in the list of books.`;
    return unreadable > 0 ? phrase`${held} ${unreadable} of them can't be read, and Books says why.` : held;
  }

  async throwAway(id: string): Promise<void> {
    await this.shelf?.note(id, (record) => ({ ...record, binned: Date.now() }));
  }

  async bringBack(id: string): Promise<void> {
    await this.shelf?.note(id, ({ binned: _, ...record }) => record);
  }

  /** Deletes a book with its versions: the versions go first, so that no version outlives its book. */
  async deletePermanently(id: string): Promise<void> {
    const { deleteVersionsOf } = await import("./versions/version-shelf.ts");
    await deleteVersionsOf(id);
    await this.shelf?.remove(id);
    forgetPlace(id);
    await forgetSteps(id);
    const { forgetLink } = await import("./own-file/links.ts");
    await forgetLink(id);
  }

  /** Notes that copies of these books were saved to a file just now. */
  async copied(ids: readonly string[]): Promise<void> {
    for (const id of ids) await this.inFile(id, {});
  }

  /** Notes when a book was saved to a file, in which revision, and the file's name; now and the present one if nothing else is said. */
  async inFile(
    id: string,
    how: { readonly at?: number; readonly revision?: number; readonly file?: string },
  ): Promise<void> {
    await this.shelf?.note(id, (record) => ({
      ...record,
      copied: { at: Date.now(), revision: record.revision, ...how },
    }));
  }
}
