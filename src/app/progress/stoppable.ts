/** Long work that is done in slices, with a button that stops it. */
import { phrase } from "../../../functions/phrase.ts";
import type { Book } from "../../book/shape.ts";
import { prepare, takesLong } from "../../engine/prepare.ts";
import type { Store } from "../../store/store.ts";
import { nextTask } from "./in-slices.ts";
import { showWork } from "./ongoing.ts";

/** How long one slice may take, in milliseconds: between two of them the browser paints and hears the button. */
const SLICE = 30;

/** For how long nothing is typed before another book, or a large step, takes the place of what there is, in milliseconds: a word is not torn in two. */
const PAUSE = 700;

/** How long it is said that something was stopped, in milliseconds. */
const SAID = 8_000;

/** Has the engine prepare for a book that takes long; false when that was stopped. Where a slice fails, what follows does the work at once, and says why it can't. */
export async function prepared(
  what: string,
  { engine }: Store,
  book: Book,
  isOpened = false,
): Promise<boolean> {
  if (!takesLong(engine, book, isOpened)) return true;
  const slices = engine.prepare(book, prepare);
  let isStopped = false;
  const onStop = () => {
    isStopped = true;
  };
  let typedAt = Number.NEGATIVE_INFINITY;
  const onKey = () => {
    typedAt = performance.now();
  };
  addEventListener("keydown", onKey, true);
  const end = showWork({ what, onStop });
  try {
    for (let begun = performance.now(); !slices.next().done; ) {
      if (performance.now() - begun < SLICE) continue;
      await nextTask();
      if (isStopped) {
        slices.return();
        return false;
      }
      begun = performance.now();
    }
    while (!isStopped && performance.now() - typedAt < PAUSE)
      await new Promise((done) => setTimeout(done, PAUSE / 10));
    if (isStopped) {
      engine.letGo();
      return false;
    }
  } catch {
    // The engine is as it was.
  } finally {
    removeEventListener("keydown", onKey, true);
    end();
  }
  return true;
}

/** Thrown out of an act that is rehearsed, where it would take its step. */
class Step {
  readonly before: Book;
  readonly next: Book;

  constructor(before: Book, next: Book) {
    this.before = before;
    this.next = next;
  }
}

/** Does an act while the store asks `onStep` before each step. */
function withSteps(store: Store, onStep: NonNullable<Store["onStep"]>, act: () => void): void {
  store.onStep = onStep;
  try {
    act();
  } finally {
    store.onStep = null;
  }
}

/** The step that an act would take; null when it took none, because it was refused and said so. */
function rehearsed(store: Store, act: () => void): Step | null {
  try {
    withSteps(
      store,
      (before, next) => {
        throw new Step(before, next);
      },
      act,
    );
    return null;
  } catch (reason) {
    if (reason instanceof Step) return reason;
    throw reason;
  }
}

/**
 * Does a large step. It is rehearsed first: where the engine must be built anew for the book that it leads to, that is
 * done in slices and can be stopped, and the book stays as it is then.
 */
export async function doLarge(store: Store, what: string, act: () => void): Promise<void> {
  // What is half typed is a step of its own.
  store.beforeStep?.();
  const step = rehearsed(store, act);
  if (!step) return;
  if (await prepared(what, store, step.next))
    try {
      // Where the book has changed meanwhile, the step is found anew.
      withSteps(store, (before, next) => (before === step.before ? step.next : next), act);
    } finally {
      store.engine.letGo();
    }
  else {
    const end = showWork({ what: phrase`Stopped, the book is as it was: ${what}`, isOver: true });
    setTimeout(end, SAID);
  }
}
