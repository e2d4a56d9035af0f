/** Any list with headings, as the functions of a roll-up read it: entries, and sums by entry. */
import { headingText, rowsOfBlock } from "../block.ts";
import { comparedName } from "../compared-name.ts";
import type { Block, Cell, Take } from "../define.ts";
import { grouped } from "../grouped.ts";
import { rememberWithObject, rememberWithObjects } from "../memo.ts";
import { nearestWord } from "../nearest-word.ts";
import { phrase } from "../phrase.ts";
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
  const { first, page } = rowsOfBlock(block);
  const names = Object.keys(wanted) as Name[];
  const inside = first.includes(headingText(wanted[names[0]!]));
  const headings = inside ? first : page;
  const at = (name: Name): number => {
    const heading = headingText(wanted[name]);
    if (heading === "")
      throw new Refusal(phrase`${name} is empty: write the heading of a column of the list`);
    const found = headings.indexOf(heading);
    if (found < 0) {
      const near = nearestWord(
        heading,
        [...headings, ...first].filter((one) => one !== ""),
      );
      throw new Refusal(
        near
          ? phrase`the list has no column "${heading.slice(0, 40)}"; is "${near}" meant?`
          : phrase`the list has no column "${heading.slice(0, 40)}": give one of its columns that heading`,
      );
    }
    if (headings.indexOf(heading, found + 1) >= 0)
      throw new Refusal(phrase`the list has two columns headed "${heading}": keep one`);
    return found;
  };
  const columns = Object.fromEntries(names.map((name) => [name, at(name)])) as Record<Name, number>;
  return { columns, lines: linesUnder(block)[inside ? "afterFirst" : "all"] };
}

interface Lines {
  readonly all: readonly ListLine[];
  readonly afterFirst: readonly ListLine[];
}

/** Kept because many formulas read the same list. */
const linesRead = rememberWithObject<Block, Lines>();

const linesUnder = (block: Block): Lines =>
  linesRead(block, () => {
    const all = rowsOfBlock(block).rows.map((cells, number) => ({ number, cells }));
    return { all, afterFirst: all.slice(1) };
  });

/** Looks no farther than the first letter: outlines are long. */
const isBlank = (cell: Cell | undefined): boolean =>
  cell === undefined || cell === null || !/\S/.test(String(cell));

/** The entry in a cell: without spaces at its ends, and a cloth without its note. Returns null for a blank cell. */
export function entryIn(cell: Cell | undefined, heading: string): string | number | null {
  if (isBlank(cell) || cell === undefined || cell === null) return null;
  if (typeof cell === "number") return cell;
  const text = String(cell).trim();
  return (CLOTH_HEADINGS as readonly string[]).includes(headingText(heading)) ? clothIn(text) : text;
}

/** Entries with equal keys are the same: capitals and spaces make no difference. */
const entryKey = (one: string | number): string =>
  typeof one === "number" ? String(Number(one.toPrecision(12))) : comparedName(one);

/** A column of a list by what stands in it. */
interface Entries {
  /** The different entries, in the order of the list. */
  readonly different: readonly (string | number)[];
  /** The lines of each entry, by its key; null for the lines that are blank. */
  readonly lines: ReadonlyMap<string | null, readonly ListLine[]>;
  /** The lines that are blank in this column. */
  readonly blank: readonly ListLine[];
}

/** Kept because many formulas ask for one entry each of the same column. */
const columnsRead = rememberWithObjects<Entries>();

const readColumn = (lines: readonly ListLine[], at: number, heading: string): Entries =>
  columnsRead([lines], `${at} ${headingText(heading)}`, () => {
    const entryOf = ({ cells }: ListLine) => entryIn(cells[at], heading);
    const groups = grouped(lines, (line) => {
      const entry = entryOf(line);
      return entry === null ? null : entryKey(entry);
    });
    const different = [...groups.values()].flatMap(([line]) => entryOf(line!) ?? []);
    return { different, lines: groups, blank: groups.get(null) ?? [] };
  });

/** The different entries of a column, in the order of the list. */
export const entriesOf = (
  lines: readonly ListLine[],
  at: number,
  heading: string,
): readonly (string | number)[] => readColumn(lines, at, heading).different;

/** The lines whose entry is this one. */
export const linesWith = (
  lines: readonly ListLine[],
  at: number,
  heading: string,
  item: string | number,
): readonly ListLine[] => readColumn(lines, at, heading).lines.get(entryKey(item)) ?? [];

/** The lines that are blank in a column. */
export const blankLines = (lines: readonly ListLine[], at: number, heading: string): readonly ListLine[] =>
  readColumn(lines, at, heading).blank;

/** That a column does not have this entry, with some of those that it has: 'no row of the list has "silk" under cloth, only "wool"'. */
export function lacking(
  lines: readonly ListLine[],
  column: number,
  heading: string,
  item: string | number,
): string {
  const entries = entriesOf(lines, column, heading).map((one) => `"${one}"`);
  const others = entries.slice(0, 3).join(", ");
  const [wanted, under] = [String(item).slice(0, 40), headingText(heading)];
  if (entries.length === 0)
    return phrase`no row of the list has "${wanted}" under ${under}: the column is empty`;
  return entries.length > 3
    ? phrase`no row of the list has "${wanted}" under ${under}, only ${others} and others`
    : phrase`no row of the list has "${wanted}" under ${under}, only ${others}`;
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
      phrase`no row of the list has "${item.slice(0, 40)}" under ${headingText(heading)}; is "${near}" meant?`,
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
