/** What has changed between a version of a book and its present state, in a few words. */
import { phrase, plural } from "../../../../functions/phrase.ts";
import type { Book } from "../../../book/shape.ts";
import { type Difference, typedDifferences } from "../../../engine/book-differences.ts";

/** How many of each kind differ, in words. */
const COUNTS: readonly (readonly [is: Difference["is"], words: (count: number) => string])[] = [
  ["page", (count) => phrase`${plural(count, "# page", "# pages")}`],
  ["cell", (count) => phrase`${plural(count, "# cell", "# cells")}`],
  ["column", (count) => phrase`${plural(count, "# column", "# columns")}`],
  ["name", (count) => phrase`${plural(count, "# name", "# names")}`],
  ["note", (count) => phrase`${plural(count, "# note", "# notes")}`],
  ["trial", (count) => phrase`${plural(count, "# trial", "# trials")}`],
  ["book", (count) => phrase`${plural(count, "# setting of the book", "# settings of the book")}`],
];

/** "12 cells, 1 name", or "nothing". Found lays do not count. */
export function changedSince(version: Book, present: Book): string {
  const differences = typedDifferences(version, present);
  const counts = COUNTS.flatMap(([is, words]) => {
    const count = differences.filter((difference) => difference.is === is).length;
    return count === 0 ? [] : [words(count)];
  });
  return counts.join(", ") || phrase`nothing`;
}
