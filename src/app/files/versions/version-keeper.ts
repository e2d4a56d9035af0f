/** Keeps versions while a maker works: before large acts, and from time to time. */
import { phrase } from "../../../../functions/phrase.ts";
import type { Book } from "../../../book/shape.ts";
import { writeBook } from "../../../book/write.ts";
import { reasonOf } from "../../faults/in-time.ts";
import { isFull } from "../full.ts";
import { isLarge, SPACING } from "./rule.ts";
import { keepVersion, makeRoom, versionsOf } from "./version-shelf.ts";
import type { Step } from "./watch.ts";

/** When the last version of each book was kept, as far as this tab has looked. */
const lastAt = new Map<string, number>();
let line: Promise<unknown> = Promise.resolve();
let troubled = false;

/** Keeps a version; where the storage is full the oldest versions make room for it. */
async function keepInRoom(id: string, book: Book, before: string, at: number): Promise<void> {
  const text = writeBook(book);
  try {
    await keepVersion(id, text, before, at);
  } catch (fault) {
    if (!isFull(fault) || (await makeRoom()) === 0) throw fault;
    await keepVersion(id, text, before, at);
  }
  lastAt.set(id, at);
}

async function keepIfDue({ id, before, after, label, at }: Step): Promise<void> {
  let last = lastAt.get(id);
  if (last === undefined) {
    last = (await versionsOf(id))[0]?.at ?? Number.NEGATIVE_INFINITY;
    lastAt.set(id, last);
  }
  // A clock that was set back must not hold versions up.
  const due = Math.abs(at - last) >= SPACING;
  if (due || isLarge(before, after)) await keepInRoom(id, before, label, at);
}

/**
 * Keeps the state of the book before a step as a version when the rule says so. When that fails,
 * `onTrouble` gets a sentence for the maker; only the first failure in a tab is reported.
 */
export function noteStep(step: Step, onTrouble: (news: string) => void): void {
  line = line
    .then(() => keepIfDue(step))
    .catch((fault) => {
      if (!troubled) onTrouble(phrase`Earlier versions can't be kept at present: ${reasonOf(fault)}`);
      troubled = true;
    });
}

/** Keeps the book as it is now, before an act that is about to come. */
export function keepNow(id: string, book: Book, before: string): Promise<void> {
  const kept = line.then(() => keepInRoom(id, book, before, Date.now()));
  line = kept.catch(() => {});
  return kept;
}
