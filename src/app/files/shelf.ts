/**
 * The books kept in this browser. A book's text and what is told of it in the list change in one
 * transaction, so that a crash leaves either the old book or the new one.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Place } from "../../book/address.ts";

/** What the list of books tells of one. */
export interface Spine {
  readonly id: string;
  readonly title: string;
  /** When it was last changed and last opened, in milliseconds since 1970. */
  readonly changed: number;
  readonly opened: number;
  /** Goes up by one with every change, so that one tab notices what another has kept. */
  readonly revision: number;
  /** The cell that was chosen last. */
  readonly place: Place;
}

interface Leaves {
  readonly id: string;
  readonly text: string;
  /** The text as it was when the book was last opened and could be read. */
  readonly before: string;
}

interface Shelves extends DBSchema {
  spines: { key: string; value: Spine };
  leaves: { key: string; value: Leaves };
}

export class Shelf {
  readonly #db: IDBPDatabase<Shelves>;

  private constructor(db: IDBPDatabase<Shelves>) {
    this.#db = db;
  }

  static async open(name = "ellwand"): Promise<Shelf> {
    const db = await openDB<Shelves>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore("spines", { keyPath: "id" });
        fresh.createObjectStore("leaves", { keyPath: "id" });
      },
    });
    return new Shelf(db);
  }

  /** Every book, the one opened last first. */
  async list(): Promise<Spine[]> {
    const spines = await this.#db.getAll("spines");
    return spines.sort((a, b) => b.opened - a.opened);
  }

  async read(id: string): Promise<{ spine: Spine; text: string; before: string } | null> {
    const tx = this.#db.transaction(["spines", "leaves"]);
    const [spine, leaves] = await Promise.all([
      tx.objectStore("spines").get(id),
      tx.objectStore("leaves").get(id),
    ]);
    return spine && leaves ? { spine, text: leaves.text, before: leaves.before } : null;
  }

  /** Keeps a book's text, unless its revision is no longer the one before: then false, and nothing is changed. */
  async keep(spine: Spine, text: string): Promise<boolean> {
    const tx = this.#db.transaction(["spines", "leaves"], "readwrite", { durability: "strict" });
    const spines = tx.objectStore("spines");
    const leaves = tx.objectStore("leaves");
    const [now, old] = await Promise.all([spines.get(spine.id), leaves.get(spine.id)]);
    const fits = !now || now.revision === spine.revision - 1;
    if (fits) {
      await Promise.all([spines.put(spine), leaves.put({ id: spine.id, text, before: old?.before ?? text })]);
    }
    await tx.done;
    return fits;
  }

  /** Notes that a book was opened. If its text read well, it becomes the one before. */
  async opened(id: string, opened: number, readWell: boolean): Promise<void> {
    const tx = this.#db.transaction(["spines", "leaves"], "readwrite");
    const spine = await tx.objectStore("spines").get(id);
    if (spine) await tx.objectStore("spines").put({ ...spine, opened });
    const leaves = readWell ? await tx.objectStore("leaves").get(id) : undefined;
    if (leaves) await tx.objectStore("leaves").put({ ...leaves, before: leaves.text });
    await tx.done;
  }

  async remove(id: string): Promise<void> {
    const tx = this.#db.transaction(["spines", "leaves"], "readwrite");
    await Promise.all([tx.objectStore("spines").delete(id), tx.objectStore("leaves").delete(id), tx.done]);
  }

  close(): void {
    this.#db.close();
  }
}
