/** Which rows of a page are other objects than before. Several parts of an edit ask for the same two states. */
import type { Page } from "./shape.ts";

type Rows = Page["rows"];

interface Compared {
  readonly was: WeakRef<Rows>;
  readonly is: WeakRef<Rows>;
  readonly changed: readonly number[];
}

/** The two states that were compared last; it keeps none of them. */
let latest: Compared | null = null;

/** The rows that differ, in order, those included that only one of the two states has. */
export function changedRows(was: Rows, is: Rows): readonly number[] {
  if (latest?.was.deref() === was && latest.is.deref() === is) return latest.changed;
  const changed: number[] = [];
  const shared = Math.min(was.length, is.length);
  for (let row = 0; row < shared; row += 1) if (was[row] !== is[row]) changed.push(row);
  for (let row = shared; row < Math.max(was.length, is.length); row += 1) changed.push(row);
  latest = { was: new WeakRef(was), is: new WeakRef(is), changed };
  return changed;
}
