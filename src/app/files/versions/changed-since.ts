/** What has changed between a version of a book and its present state, in a few words. */
import type { Book } from "../../../book/shape.ts";
import { type Difference, typedDifferences } from "../../../engine/book-differences.ts";

const NOUNS: readonly (readonly [is: Difference["is"], one: string, many: string])[] = [
  ["page", "page", "pages"],
  ["cell", "cell", "cells"],
  ["column", "column", "columns"],
  ["name", "name", "names"],
  ["note", "note", "notes"],
  ["trial", "trial", "trials"],
  ["book", "setting of the book", "settings of the book"],
];

/** "12 cells, 1 name", or "nothing". Found lays do not count. */
export function changedSince(version: Book, present: Book): string {
  const differences = typedDifferences(version, present);
  const counts = NOUNS.flatMap(([is, one, many]) => {
    const count = differences.filter((difference) => difference.is === is).length;
    return count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
  });
  return counts.join(", ") || "nothing";
}
