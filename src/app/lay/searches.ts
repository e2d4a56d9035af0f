/** The searches for the lays and joins of a book, which begin when the lay planner is there. */
import type { Store } from "../../store/store.ts";
import { backgroundOf } from "./background.ts";
import { joinSearchOf } from "./join-search.ts";
import { quickLaysOf } from "./quick-lays.ts";

export { backgroundOf };

/** Looks for what the cells of the book wait for, and for better lays; returns what ends it. */
export function search(store: Store): () => void {
  const ends = [backgroundOf, joinSearchOf, quickLaysOf].map((of) => of(store).watch());
  return () => {
    for (const end of ends) end();
  };
}
