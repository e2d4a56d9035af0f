/** How a part beside the grid follows the book: the grid is painted first, then one part after another. */
import { startTransition, useEffect, useState } from "react";
import type { Place } from "../../book/address.ts";
import type { Store } from "../../store/store.ts";
import { useRevision } from "../store-hooks.ts";
import { AfterPaint, browserClock } from "./after-paint.ts";

/** The revision of the book and the chosen cell that a part shows. */
export interface Seen {
  readonly revision: number;
  readonly place: Place;
}

/** For a part that shows the same whatever cell is chosen. */
const ANY: Place = { page: 0, row: 0, column: 0 };

/** The one order of what follows the paint. */
export const afterPaint = new AfterPaint(browserClock);

/**
 * What a part beside the grid shows: the grid is painted first, then one part after another. While
 * `isBehind`, the part shows what was there before, and must say so (`Follower`).
 */
export function useAfterPaint(
  store: Store,
  place: Place = ANY,
): { readonly seen: Seen; readonly isBehind: boolean } {
  const revision = useRevision(store);
  const { page, row, column } = place;
  const [seen, setSeen] = useState<Seen>({ revision, place });
  const [part] = useState(() => ({}));
  const { place: at } = seen;
  const isBehind = seen.revision !== revision || at.page !== page || at.row !== row || at.column !== column;
  useEffect(() => {
    if (isBehind)
      afterPaint.ask(part, () => startTransition(() => setSeen({ revision, place: { page, row, column } })));
    else afterPaint.done(part);
  }, [isBehind, part, revision, page, row, column]);
  useEffect(() => () => afterPaint.done(part), [part]);
  return { seen, isBehind };
}
