/** Begins the searches for lays and joins once the lay planner is there. */
import { useEffect, useState } from "react";
import { whenWhole } from "../../engine/late.ts";
import type { Store } from "../../store/store.ts";

/** Searches for the book of a store while the part is shown; `writes` is whether this tab keeps the book. */
export function useSearches(store: Store, writes: boolean): void {
  const [searches, setSearches] = useState<typeof import("./searches.ts") | null>(null);
  useEffect(() => {
    let isOver = false;
    whenWhole(() => {
      void import("./searches.ts").then((loaded) => {
        if (!isOver) setSearches(loaded);
      });
    });
    return () => {
      isOver = true;
    };
  }, []);
  useEffect(() => searches?.search(store), [searches, store]);
  useEffect(() => searches?.backgroundOf(store).writes(writes), [searches, store, writes]);
}
