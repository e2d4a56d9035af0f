/**
 * What differs between two states of plain data that share what is the same in both: small for a
 * typed cell however large the book. `applied(old, difference(old, next))` equals `next`.
 */

import { phrase } from "../../../functions/phrase.ts";

type Plain = unknown;
type Group = Readonly<Record<string, Plain>>;

export type Change =
  /** Another value. */
  | { readonly is: Plain }
  /** Lists of the same length: changes by index. */
  | { readonly at: readonly (readonly [number, Change])[] }
  /** A list that is longer or shorter: a number of entries is cut out from an index on, and others are put there. */
  | { readonly from: number; readonly cut: number; readonly put: readonly Plain[] }
  /** A group of named things: changes and new ones by name, and the names that are gone. */
  | { readonly in: readonly (readonly [string, Change])[]; readonly gone: readonly string[] };

const isGroup = (value: Plain): value is Group =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Null when the two are equal throughout. */
export function difference(old: Plain, next: Plain): Change | null {
  if (old === next) return null;
  if (Array.isArray(old) && Array.isArray(next)) return ofLists(old, next);
  if (isGroup(old) && isGroup(next)) return ofGroups(old, next);
  return { is: next };
}

function ofLists(old: readonly Plain[], next: readonly Plain[]): Change | null {
  if (old.length !== next.length) {
    const least = Math.min(old.length, next.length);
    let from = 0;
    while (from < least && old[from] === next[from]) from += 1;
    let after = 0;
    while (after < least - from && old.at(-1 - after) === next.at(-1 - after)) after += 1;
    return { from, cut: old.length - after - from, put: next.slice(from, next.length - after) };
  }
  const at: [number, Change][] = [];
  for (let i = 0; i < old.length; i += 1) {
    // A long list has few changes.
    if (old[i] === next[i]) continue;
    const change = difference(old[i], next[i]);
    if (change) at.push([i, change]);
  }
  return at.length > 0 ? { at } : null;
}

function ofGroups(old: Group, next: Group): Change | null {
  const changes: [string, Change][] = [];
  for (const [name, value] of Object.entries(next)) {
    const change = Object.hasOwn(old, name) ? difference(old[name], value) : { is: value };
    if (change) changes.push([name, change]);
  }
  const gone = Object.keys(old).filter((name) => !Object.hasOwn(next, name));
  return changes.length + gone.length > 0 ? { in: changes, gone } : null;
}

/** Throws when the change does not belong to this state. */
export function applied(old: Plain, change: Change): Plain {
  if ("is" in change) return change.is;
  if ("in" in change) {
    if (!isGroup(old)) throw new Error(phrase`a group of named things is missing`);
    const next = new Map(Object.entries(old));
    for (const name of change.gone) next.delete(name);
    for (const [name, inner] of change.in) {
      if (!("is" in inner) && !next.has(name)) throw new Error(phrase`${name} is missing`);
      next.set(name, applied(next.get(name), inner));
    }
    return Object.fromEntries(next);
  }
  if (!Array.isArray(old)) throw new Error(phrase`a list is missing`);
  if ("put" in change) {
    if (change.from + change.cut > old.length) throw new Error(phrase`a list is too short`);
    return old.toSpliced(change.from, change.cut, ...change.put);
  }
  const next = [...old];
  for (const [i, inner] of change.at) {
    if (i >= next.length) throw new Error(phrase`a list is too short`);
    next[i] = applied(next[i], inner);
  }
  return next;
}
