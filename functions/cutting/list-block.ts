/** Any list with headings, as the functions of a roll-up read it: entries, and sums by entry. */
import { headingText } from "../block.ts";
import { comparedName } from "../compared-name.ts";
import type { Block, Cell, Take } from "../define.ts";
import { nearestWord } from "../nearest-word.ts";
import { Refusal } from "../refusal.ts";
import { CLOTH_HEADINGS, clothIn } from "./cloth-name.ts";

/** The argument of every function that reads such a list. */
export const LIST = {
  kind: "block",
  about:
    "the list with its headings, or under those of the page's columns; order and other columns don't matter",
} as const satisfies Take;

export interface ListLine {
  /** The row of the block, counted from 0. */
  readonly number: number;
  readonly cells: readonly Cell[];
}

/** A list in which the wanted columns are found. */
export interface Listed<Name extends string> {
  readonly columns: Readonly<Record<Name, number>>;
  readonly lines: readonly ListLine[];
}

/**
 * Finds columns by their headings: in the block's first row where it has the first of them, else above the
 * page's columns. Refuses a heading that is nowhere, with the nearest, and one that two columns have.
 */
export function listed<Name extends string>(
  block: Block,
  wanted: Readonly<Record<Name, string>>,
): Listed<Name> {
  const rows = Array.from({ length: block.length / block.wide }, (_, i) =>
    block.slice(i * block.wide, (i + 1) * block.wide),
  );
  const names = Object.keys(wanted) as Name[];
  const first = (rows[0] ?? []).map(headingText);
  const inside = first.includes(headingText(wanted[names[0]!]));
  const headings = inside ? first : block.headings.map(headingText);
  const at = (name: Name): number => {
    const heading = headingText(wanted[name]);
    if (heading === "") throw new Refusal(`${name} is empty: write the heading of a column of the list`);
    const found = headings.indexOf(heading);
    if (found < 0) {
      const near = nearestWord(
        heading,
        [...headings, ...first].filter((one) => one !== ""),
      );
      throw new Refusal(
        `the list has no column "${heading.slice(0, 40)}"${near ? `; is "${near}" meant?` : ": give one of its columns that heading"}`,
      );
    }
    if (headings.indexOf(heading, found + 1) >= 0)
      throw new Refusal(`the list has two columns headed "${heading}": keep one`);
    return found;
  };
  const columns = Object.fromEntries(names.map((name) => [name, at(name)])) as Record<Name, number>;
  const lines = rows.map((cells, number) => ({ number, cells })).slice(inside ? 1 : 0);
  return { columns, lines };
}

const isBlank = (cell: Cell | undefined): boolean =>
  cell === undefined || cell === null || String(cell).trim() === "";

/** The entry in a cell: without spaces at its ends, and a cloth without its note. Returns null for a blank cell. */
export function entryIn(cell: Cell | undefined, heading: string): string | number | null {
  if (isBlank(cell) || cell === undefined || cell === null) return null;
  if (typeof cell === "number") return cell;
  const text = String(cell).trim();
  return (CLOTH_HEADINGS as readonly string[]).includes(headingText(heading)) ? clothIn(text) : text;
}

/** Whether two entries are the same: capitals and spaces make no difference. */
export const sameEntry = (a: string | number, b: string | number): boolean => entryKey(a) === entryKey(b);

const entryKey = (one: string | number): string =>
  typeof one === "number" ? String(Number(one.toPrecision(12))) : comparedName(one);

/** The different entries of a column, in the order of the list. */
export function entriesOf(lines: readonly ListLine[], column: number, heading: string): (string | number)[] {
  const found = new Map<string, string | number>();
  for (const { cells } of lines) {
    const entry = entryIn(cells[column], heading);
    if (entry !== null && !found.has(entryKey(entry))) found.set(entryKey(entry), entry);
  }
  return [...found.values()];
}

/** The lines whose entry is this one. */
export const linesWith = (
  lines: readonly ListLine[],
  column: number,
  heading: string,
  item: string | number,
): readonly ListLine[] =>
  lines.filter(({ cells }) => {
    const entry = entryIn(cells[column], heading);
    return entry !== null && sameEntry(entry, item);
  });

/** That a column does not have this entry, with some of those that it has: 'no row of the list has "silk" under cloth, only "wool"'. */
export function lacking(
  lines: readonly ListLine[],
  column: number,
  heading: string,
  item: string | number,
): string {
  const entries = entriesOf(lines, column, heading).map((one) => `"${one}"`);
  const others = entries.slice(0, 3).join(", ");
  return `no row of the list has "${String(item).slice(0, 40)}" under ${headingText(heading)}${entries.length === 0 ? ": the column is empty" : `, only ${others}${entries.length > 3 ? " and others" : ""}`}`;
}

/** Refuses an entry that the column does not have and that is likely a misspelling of one that it has. */
export function refuseMisspelt(
  lines: readonly ListLine[],
  column: number,
  heading: string,
  item: string | number,
): void {
  if (typeof item === "number" || linesWith(lines, column, heading, item).length > 0) return;
  const near = nearestWord(item, entriesOf(lines, column, heading).map(String));
  if (near)
    throw new Refusal(
      `no row of the list has "${item.slice(0, 40)}" under ${headingText(heading)}; is "${near}" meant?`,
    );
}

/** The lines whose entry is this one. Refuses an entry that the column does not have, with the nearest. */
export function linesOf(
  lines: readonly ListLine[],
  column: number,
  heading: string,
  item: string | number,
): readonly ListLine[] {
  const found = linesWith(lines, column, heading, item);
  if (found.length > 0) return found;
  refuseMisspelt(lines, column, heading, item);
  throw new Refusal(lacking(lines, column, heading, item));
}

/** The item of an argument: a text without spaces at its ends, or a number; null when it is blank. */
export const itemOf = (text: string | null, heading: string): string | number | null => {
  const entry = entryIn(text, heading);
  return typeof entry === "string" && /^-?\d+(\.\d+)?$/.test(entry) ? Number(entry) : entry;
};
