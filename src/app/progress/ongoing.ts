/** What the page is busy with for longer than a moment: shown until it ends. */

export interface Work {
  /** "Opening “The squire's cloak”" */
  readonly what: string;
  /** Ends the work; left out where it can't be stopped. */
  readonly onStop?: () => void;
  /** Begins it again, where it may be stuck. */
  readonly onAgain?: () => void;
  /** What is only said for a while: that something was stopped. */
  readonly isOver?: true;
}

let list: readonly Work[] = [];
const listeners = new Set<() => void>();

function become(next: readonly Work[]): void {
  list = next;
  for (const listener of [...listeners]) listener();
}

export const ongoing = {
  get list(): readonly Work[] {
    return list;
  },
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};

/** Shows some work, in the place of what is shown with the same words; the function that is returned ends the showing. */
export function showWork(work: Work): () => void {
  become([...list.filter(({ what }) => what !== work.what), work]);
  return () => become(list.filter((one) => one !== work));
}

/** How long a browser gets to paint what was just said, in milliseconds. */
const PAINT = 30;

/** Shows what the page is about to do, lets the browser paint it, and does it. The page itself stands still meanwhile. */
export async function shownWhile<T>(what: string, work: () => T | Promise<T>): Promise<T> {
  const end = showWork({ what });
  try {
    await new Promise((done) => setTimeout(done, PAINT));
    return await work();
  } finally {
    end();
  }
}
