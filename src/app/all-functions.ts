/** Loads the functions that the start leaves out (src/engine/late.ts), and the lay planner: soon after it, or before a book that names one of them. */
import type { Book } from "../book/shape.ts";
import { askWith, didNotCome, missingIn, notThereYet } from "../engine/late.ts";
import { plannerDidNotCome } from "../lay/start-desk.ts";
import { reasonOf } from "./faults/in-time.ts";

let coming: Promise<void> | null = null;

/** Every function, once it is there; fails with a sentence when they can't be loaded, and can be called again then. */
export function allFunctions(): Promise<void> {
  coming ??= import("./late-parts.ts").then(
    () => {},
    (fault) => {
      coming = null;
      didNotCome(reasonOf(fault));
      plannerDidNotCome(reasonOf(fault));
      throw fault;
    },
  );
  return coming;
}

askWith(() => allFunctions().catch(() => {}));

/** Waits until every function is there that one of these books names; fails with a sentence when one can't be loaded. */
export async function functionsOf(...books: readonly (Book | null | undefined)[]): Promise<void> {
  for (const book of books) {
    const name = book ? missingIn(book) : null;
    if (name === null) continue;
    await allFunctions().catch(() => {
      throw new Error(notThereYet(name));
    });
  }
}

/** A part of the page that lists functions or calculates books of its own: it is loaded when every function is there. */
export async function withAllFunctions<T>(load: () => Promise<T>): Promise<T> {
  await allFunctions();
  return load();
}
