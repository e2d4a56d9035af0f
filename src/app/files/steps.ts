/**
 * The steps that undo would take back, kept beside the books so that they outlive a reload. They are a
 * convenience: where they can't be kept or do not fit the book, the book opens without them.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Book } from "../../book/shape.ts";
import { asWritten } from "../../book/write.ts";
import type { Past } from "../../store/store.ts";
import { inTime } from "../faults/in-time.ts";
import { applied, type Change, difference } from "./changes.ts";
import type { BookRecord } from "./shelf.ts";

/** One step: what leads from the book after it back to the book before it. */
interface KeptStep {
  readonly label: string;
  readonly change: Change | null;
}

/** The state that steps led to: the tab that kept it on the shelf, and the step of that tab's journal. */
export type State = NonNullable<BookRecord["by"]>;

interface KeptSteps {
  /** The book and the state in it, as `keyOf` writes them. */
  readonly id: string;
  /** The oldest first, each as JSON. */
  readonly steps: readonly string[];
}

/** The most steps kept, and the most characters of all of them; the oldest go first. */
const MOST_STEPS = 50;
const MOST_TEXT = 400_000;

/** How long the browser may take to keep or to give them, in milliseconds: the book waits that long. */
const LONGEST = 5_000;

/** Lays are knowledge: no step takes one back. */
const state = (book: Book): Book => asWritten({ ...book, lays: {} });

const written = new WeakMap<Past, { readonly after: Book; readonly text: string }>();

function stepText(step: Past, after: Book): string {
  const known = written.get(step);
  if (known?.after === after) return known.text;
  const change = difference(state(after), state(step.book));
  const text = JSON.stringify({ label: step.label, change } satisfies KeptStep);
  written.set(step, { after, text });
  return text;
}

/** The steps that led to a book, as texts, the oldest first: as many of the last as there is room for. */
export function writeSteps(past: readonly Past[], book: Book): string[] {
  const texts: string[] = [];
  let length = 0;
  let after = book;
  for (const step of past.slice(-MOST_STEPS).toReversed()) {
    const text = stepText(step, after);
    length += text.length;
    if (length > MOST_TEXT) break;
    texts.unshift(text);
    after = step.book;
  }
  return texts;
}

/** The steps of such texts before a book; those that do not fit it, and all before them, are left out. */
export function readSteps(texts: readonly string[], book: Book): Past[] {
  const past: Past[] = [];
  let after: unknown = state(book);
  try {
    for (const text of texts.toReversed()) {
      const { label, change } = JSON.parse(text) as KeptStep;
      after = change ? applied(after, change) : after;
      past.unshift({ book: after as Book, label });
    }
  } catch {
    // What was read until here fits.
  }
  return past;
}

interface Steps extends DBSchema {
  steps: { key: string; value: KeptSteps };
}

let opening: Promise<IDBPDatabase<Steps>> | null = null;

function database(): Promise<IDBPDatabase<Steps>> {
  opening ??= inTime(
    openDB<Steps>("ellwand-steps", 1, {
      upgrade: (fresh) => {
        fresh.createObjectStore("steps", { keyPath: "id" });
      },
    }),
    LONGEST,
  );
  return opening;
}

const keyOf = (id: string, { tab, step }: State): string => `${id}/${tab}/${step}`;

/** Every key of a book. What was kept before a state was part of the key stands under the book's own name. */
const keysOf = (id: string): readonly [string, string] => [id, `${id}0`];

/**
 * Keeps the steps that led to a state of a book. They are kept before the shelf takes that state, beside
 * those of the state before: whichever of the two the shelf has when the page is gone, its steps are there.
 */
export async function keepSteps(id: string, state: State, past: readonly Past[], book: Book): Promise<void> {
  try {
    const steps = writeSteps(past, book);
    const kept = database().then((db) => db.put("steps", { id: keyOf(id, state), steps }));
    await inTime(kept, LONGEST);
  } catch {
    // The book itself is kept elsewhere.
  }
}

/** The shelf has taken a state of a book: the steps to any other are of no use. */
export async function keepOnly(id: string, state: State): Promise<void> {
  try {
    const own = keyOf(id, state);
    const [first, last] = keysOf(id);
    const tx = (await database()).transaction("steps", "readwrite");
    await Promise.all([
      tx.store.delete(IDBKeyRange.bound(first, own, false, true)),
      tx.store.delete(IDBKeyRange.bound(own, last, true, true)),
      tx.done,
    ]);
  } catch {
    // They go another time.
  }
}

/** The steps that led to a state of a book which the shelf has; none where only those of another state were kept. */
export async function recallSteps(id: string, state: State | undefined, book: Book): Promise<Past[]> {
  if (!state) return [];
  try {
    const kept = await inTime(
      database().then((db) => db.get("steps", keyOf(id, state))),
      LONGEST,
    );
    return kept ? readSteps(kept.steps, book) : [];
  } catch {
    return [];
  }
}

/** Lets go of the steps of a book that is deleted for good. */
export async function forgetSteps(id: string): Promise<void> {
  try {
    await (await database()).delete("steps", IDBKeyRange.bound(...keysOf(id), false, true));
  } catch {
    // Where nothing can be kept there is nothing to let go of.
  }
}
