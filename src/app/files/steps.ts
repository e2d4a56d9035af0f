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

/** One step: what leads from the book after it back to the book before it. */
interface KeptStep {
  readonly label: string;
  readonly change: Change | null;
}

interface KeptSteps {
  readonly id: string;
  /** The revision on the shelf that the last step led to. */
  readonly revision: number;
  /** The oldest first, each as JSON. */
  readonly steps: readonly string[];
}

/** The most steps kept, and the most characters of all of them; the oldest go first. */
const MOST_STEPS = 50;
const MOST_TEXT = 400_000;

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
    5000,
  );
  return opening;
}

/** Keeps the steps of a book that the shelf has taken as `revision`. */
export async function keepSteps(
  id: string,
  revision: number,
  past: readonly Past[],
  book: Book,
): Promise<void> {
  try {
    await (await database()).put("steps", { id, revision, steps: writeSteps(past, book) });
  } catch {
    // The book itself is kept elsewhere.
  }
}

/** The steps that led to a book as the shelf has it; none where they belong to another state of it. */
export async function recallSteps(id: string, revision: number, book: Book): Promise<Past[]> {
  try {
    const kept = await inTime((await database()).get("steps", id), 2000);
    return kept?.revision === revision ? readSteps(kept.steps, book) : [];
  } catch {
    return [];
  }
}

/** Lets go of the steps of a book that is deleted for good. */
export async function forgetSteps(id: string): Promise<void> {
  try {
    await (await database()).delete("steps", id);
  } catch {
    // Where nothing can be kept there is nothing to let go of.
  }
}
