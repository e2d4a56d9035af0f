/**
 * Notices that a worker has ended without an error event, as when the browser ends it for want of memory, and gives it
 * the event that is missing: whoever listens for errors hears of it. The sign of life is a lock (`alive.ts`). A page
 * that is served without a certificate from another computer has no locks; there nothing is noticed.
 */
import { phrase } from "../../functions/phrase.ts";

/** Between two looks whether a new worker holds its lock yet, in milliseconds. */
const LOOK_MS = 500;

let count = 0;

/** A name for a worker that no other worker of this browser has. */
export function workerName(): string {
  count += 1;
  return `ellwand worker ${performance.timeOrigin} ${Math.random()} ${count}`;
}

/** Watches a worker of this name until it is terminated here. */
export function watchEnd(worker: Worker, name: string): void {
  const locks = globalThis.navigator?.locks;
  if (!locks) return;
  const over = new AbortController();
  worker.terminate = () => {
    over.abort();
    Worker.prototype.terminate.call(worker);
  };
  const isOver = () => over.signal.aborted;
  const watch = async () => {
    for (let holds = false; !holds; ) {
      await new Promise((done) => setTimeout(done, LOOK_MS));
      if (isOver()) return;
      holds = ((await locks.query()).held ?? []).some((lock) => lock.name === name);
    }
    await locks.request(name, { signal: over.signal }, () => {});
    if (isOver()) return;
    const message = phrase`the worker ended without a word, perhaps because the browser had no more memory for it`;
    worker.dispatchEvent(new ErrorEvent("error", { message, cancelable: true }));
  };
  // A browser that refuses to tell of its locks leaves the worker unwatched.
  watch().catch(() => {});
}
