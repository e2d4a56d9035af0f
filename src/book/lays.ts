/** The found lays that a book keeps: those its cells ask for, and some older ones. */
import type { Book, FoundLay } from "./shape.ts";

/** Lays that no cell asks for any more: an undone step may ask again, and they bound smaller jobs. */
export const MOST_UNASKED = 40;

/** The lays with one more, the newest last; of those that no cell asks for the oldest make room. */
export function withLay(
  lays: Book["lays"],
  hash: string,
  lay: FoundLay,
  asked: () => ReadonlySet<string>,
): Book["lays"] {
  const { [hash]: _, ...others } = lays;
  const all = Object.entries({ ...others, [hash]: lay });
  if (all.length <= MOST_UNASKED) return Object.fromEntries(all);
  const needed = asked();
  const isSpare = (one: string) => one !== hash && !needed.has(one);
  let tooMany = all.filter(([one]) => isSpare(one)).length - MOST_UNASKED;
  return Object.fromEntries(all.filter(([one]) => !isSpare(one) || tooMany-- <= 0));
}
