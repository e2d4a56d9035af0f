/** Faults that no part of the page has dealt with, each shown once, as a sentence. */
import { phrase } from "../../../functions/phrase.ts";
import { reasonOf } from "./in-time.ts";

let current: string | null = null;
const dismissed = new Set<string>();
const listeners = new Set<() => void>();

function become(next: string | null): void {
  current = next;
  for (const listener of [...listeners]) listener();
}

export const faults = {
  get current(): string | null {
    return current;
  },
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  dismiss(): void {
    if (current) dismissed.add(current);
    become(null);
  },
};

/** Shows a fault, unless the same one was dismissed before. */
export function report(fault: unknown): void {
  const sentence = phrase`Something in the page failed (${reasonOf(fault)}). Your book is not affected; if the page stops responding, save the book to a file and reload the page`;
  if (current === null && !dismissed.has(sentence)) become(sentence);
}

/** Runs a part of the grid or of a listener that must not fail; on a fault it shows the fault and gives `otherwise`. */
export function guarded<T>(work: () => T, otherwise: T): T {
  try {
    return work();
  } catch (fault) {
    console.error(fault);
    report(fault);
    return otherwise;
  }
}

/** A browser's own remark on sizes that are still changing; nothing failed. */
const HARMLESS = /^ResizeObserver loop/;

/** Reports every error that nothing caught: in handlers of events, in timers, in promises, in what workers send. */
export function listenForFaults(): void {
  addEventListener("error", (event) => {
    if (event instanceof ErrorEvent && !HARMLESS.test(event.message)) report(event.error ?? event.message);
  });
  addEventListener("unhandledrejection", ({ reason }) => report(reason));
}
