/**
 * The mark that a book is being opened. A page that hangs or dies over a book leaves it behind, and
 * the next start opens another book instead of hanging again.
 */
import { forget, recall, remember } from "./storage.ts";
import { TAB } from "./tab.ts";

/** What was being done: building the book, or taking up what a closed tab had written down of it. */
export type Stage = "book" | "journal";

interface Mark {
  readonly tab: string;
  readonly at: number;
  readonly stage: Stage;
}

/** An opening that takes longer than this, in milliseconds, counts as hung. */
const HUNG = 10_000;
/** How long after the opening the mark stays: the first drawing of the page may hang too. */
const SETTLED = 1_000;

const keyOf = (id: string): string => `ellwand.opening.${id}`;

let ending = () => {};

/** Sets the mark; it goes when the page has worked for a moment, or is left in good order. */
export function beginOpening(id: string, stage: Stage): void {
  ending();
  remember("localStorage", keyOf(id), JSON.stringify({ tab: TAB, at: Date.now(), stage } satisfies Mark));
  const end = () => {
    clearTimeout(timer);
    removeEventListener("pagehide", end);
    forget("localStorage", keyOf(id));
  };
  const timer = setTimeout(end, SETTLED);
  addEventListener("pagehide", end);
  ending = end;
}

/** Takes the mark away: the opening ended, well or with a reason. */
export const endOpening = (): void => ending();

/** What an earlier page was doing when it hung or died over this book; null when none did. */
export function hungAt(id: string, alive: ReadonlySet<string> | null): Stage | null {
  try {
    const mark = JSON.parse(recall("localStorage", keyOf(id)) ?? "null") as Mark | null;
    if (!mark || mark.tab === TAB) return null;
    const busy = alive === null || alive.has(mark.tab);
    if (busy && Date.now() - mark.at < HUNG) return null;
    return mark.stage === "journal" ? "journal" : "book";
  } catch {
    return null;
  }
}
