/** The found lays that a book keeps: those its cells ask for, and some older ones. */
import type { Book, FoundLay } from "./shape.ts";

/** Lays that no cell asks for any more: an undone step may ask again, and they bound smaller jobs. */
export const MOST_UNASKED = 24;
/** Copies of pieces in all of those. */
const MOST_COPIES = 2000;

/** The lays with one more, the newest last; of those that no cell asks for the oldest make room. */
export function withLay(
  lays: Book["lays"],
  hash: string,
  lay: FoundLay,
  asked: () => ReadonlySet<string>,
): Book["lays"] {
  const { [hash]: _, ...others } = lays;
  const all = Object.entries({ ...others, [hash]: lay });
  const copiesOf = (one: FoundLay) => one.placements.length;
  const copies = all.reduce((sum, [, one]) => sum + copiesOf(one), 0);
  if (all.length <= MOST_UNASKED && copies <= MOST_COPIES) return Object.fromEntries(all);
  const needed = asked();
  let [count, room] = [0, MOST_COPIES];
  const kept = all.toReversed().filter(([own, one]) => {
    if (own === hash || needed.has(own)) return true;
    count += 1;
    room -= copiesOf(one);
    return count <= MOST_UNASKED && room >= 0;
  });
  return Object.fromEntries(kept.toReversed());
}

const isByHand = (lay: FoundLay | undefined): boolean => lay?.origin?.by === "hand";

/** Lays of two states of a book together: of two for one question `mine` stays, but a lay made by hand goes before one that was found. */
export function bothLays(mine: Book["lays"], theirs: Book["lays"]): Book["lays"] {
  const byHand = Object.entries(theirs).filter(([hash, lay]) => isByHand(lay) && !isByHand(mine[hash]));
  return { ...theirs, ...mine, ...Object.fromEntries(byHand) };
}

function sameByHand(a: Book["lays"], b: Book["lays"]): boolean {
  if (a === b) return true;
  const hashes = [...Object.keys(a), ...Object.keys(b)];
  return hashes.every((hash) => a[hash] === b[hash] || !(isByHand(a[hash]) || isByHand(b[hash])));
}

/** Whether two states of a book differ in nothing but their lays. */
export function sameButLays(a: Book | null, b: Book | null): boolean {
  if (a === b) return true;
  if (!a || !b) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)] as (keyof Book)[]);
  return [...keys].every((key) => key === "lays" || a[key] === b[key]);
}

/** Whether two states of a book differ in nothing but lays that a search found. A lay made by hand is work. */
export const sameWork = (a: Book | null, b: Book | null): boolean =>
  a === b || (a !== null && b !== null && sameButLays(a, b) && sameByHand(a.lays, b.lays));

/** Whether two states of a book differ in nothing, though they may be two objects. */
export const sameState = (a: Book | null, b: Book | null): boolean =>
  sameButLays(a, b) && a?.lays === b?.lays;
