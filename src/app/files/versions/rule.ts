/**
 * Which earlier versions of a book are kept: recent ones closely, older ones sparsely, up to a limit
 * of number and size. A version is kept before the first change after a pause of SPACING, and before
 * each large act.
 */
import { phrase } from "../../../../functions/phrase.ts";
import type { Book, Page } from "../../../book/shape.ts";

/** What is known of a version beside its text. */
export interface Version {
  readonly key: string;
  /** The id of its book. */
  readonly book: string;
  /** When it was kept, in milliseconds since 1970. */
  readonly at: number;
  /** What was done next: "paste 24 cells". */
  readonly before: string;
  /** The name that the maker gave it. */
  readonly name?: string;
  /** How much room it takes, in bytes. */
  readonly bytes: number;
}

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** The least time between two versions that are kept while the maker works on, in milliseconds. */
export const SPACING = 5 * MINUTE;

/** Up to which age one version is kept of each span; 0 keeps every one. */
const BANDS = [
  { age: HOUR, span: 0 },
  { age: DAY, span: HOUR },
  { age: 30 * DAY, span: DAY },
  { age: Number.POSITIVE_INFINITY, span: 7 * DAY },
] as const;

/** Versions without a name for each book, those with a name, and bytes for each book and in all. */
export const MOST = { plain: 100, named: 20, bytes: 20_000_000, inAll: 100_000_000 } as const;

/** The rule in words, as the page says it. */
export const RULE = phrase`A version is kept before each large change (20 cells or more, a page, the unit) and otherwise every five minutes of work. All versions of the last hour stay, then one of each hour for a day, one of each day for a month, and one of each week after that. At most 100 versions and 20 MB of each book are kept, and 100 MB of all books. A version with a name stays until you delete it. When the browser's storage is full, versions are deleted before any book, the oldest first.`;

/** An act that changes this many cells is large. */
const MANY_CELLS = 20;

/** How many cells that are not blank differ between two lists of rows; rows that are the same object are the same. */
function changedIn(before: Page["rows"], after: Page["rows"]): number {
  if (before === after) return 0;
  const filled = (row: readonly string[]) => row.filter((typed) => typed !== "").length;
  if (before.length !== after.length) {
    const [old, next] = [new Set(before), new Set(after)];
    const gone = before.filter((row) => !next.has(row)).reduce((sum, row) => sum + filled(row), 0);
    const come = after.filter((row) => !old.has(row)).reduce((sum, row) => sum + filled(row), 0);
    return Math.max(gone, come);
  }
  let count = 0;
  for (const [i, row] of before.entries()) {
    const next = after[i]!;
    if (row === next) continue;
    for (let c = 0; c < Math.max(row.length, next.length); c += 1)
      if ((row[c] ?? "") !== (next[c] ?? "")) count += 1;
  }
  return count;
}

/** Whether a step changes so much that the book before it is worth keeping at once. */
export function isLarge(before: Book, after: Book): boolean {
  if (before.unit !== after.unit || after.pages.length < before.pages.length) return true;
  const there = new Map(after.pages.map((page) => [page.title, page]));
  const known = new Set(before.pages.map(({ title }) => title));
  let count = 0;
  for (const page of before.pages) count += changedIn(page.rows, there.get(page.title)?.rows ?? []);
  for (const page of after.pages) if (!known.has(page.title)) count += changedIn([], page.rows);
  return count >= MANY_CELLS;
}

/** The room of a version. A row of the database that says no size, or none that counts, must not make the others go. */
const roomOf = ({ bytes }: Version): number => (Number.isFinite(bytes) ? bytes : 0);

const newestFirst = (list: readonly Version[]): Version[] =>
  list.toSorted((a, b) => b.at - a.at || (a.key < b.key ? 1 : -1));

/** The versions of one book that the rule deletes at a given time. The newest version and versions with a name are never among them. */
export function givenUp(list: readonly Version[], now: number): Version[] {
  const taken = new Set<string>();
  let bytes = list.reduce((sum, one) => sum + (one.name === undefined ? 0 : roomOf(one)), 0);
  let count = 0;
  return newestFirst(list).filter((one, i) => {
    const { at, key, name } = one;
    const own = roomOf(one);
    if (name !== undefined) return false;
    const { span } = BANDS.find(({ age }) => now - at < age)!;
    const slot = span === 0 ? key : `${span} ${Math.floor(at / span)}`;
    if (taken.has(slot)) return true;
    const fits = i === 0 || (count < MOST.plain && bytes + own <= MOST.bytes);
    if (!fits) return true;
    taken.add(slot);
    count += 1;
    bytes += own;
    return false;
  });
}

/** The versions of all books in the order in which they are deleted for room: those without a name first, the oldest first. */
export const firstToGo = (list: readonly Version[]): Version[] => [
  ...newestFirst(list.filter(({ name }) => name === undefined)).toReversed(),
  ...newestFirst(list.filter(({ name }) => name !== undefined)).toReversed(),
];

/** The versions to delete so that those of all books together keep to their limit. Versions with a name are never among them. */
export function aboveLimit(list: readonly Version[]): Version[] {
  let over = list.reduce((sum, one) => sum + roomOf(one), 0) - MOST.inAll;
  return firstToGo(list).filter((one) => {
    if (over <= 0 || one.name !== undefined) return false;
    over -= roomOf(one);
    return true;
  });
}

/** The reason why a version can't get a name; null when it can. */
export function namingFault(list: readonly Version[], version: Version): string | null {
  const named = list.filter(({ name, key }) => name !== undefined && key !== version.key);
  if (named.length >= MOST.named)
    return phrase`a book keeps at most ${MOST.named} versions with a name; take one name away, or delete that version`;
  const bytes = named.reduce((sum, one) => sum + one.bytes, version.bytes);
  return bytes > MOST.bytes
    ? phrase`the versions of this book that have a name would take more than 20 MB; delete one of them, or save this one to a file`
    : null;
}
