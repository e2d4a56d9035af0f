/** A block of cells with headings, as a function that reads a list by its headings is given it. */
import type { Block, Cell } from "./define.ts";
import { misspeltPhrase } from "./nearest-word.ts";
import { Refusal } from "./refusal.ts";

export const asBlock = (cells: readonly Cell[], wide: number, headings: readonly string[]): Block =>
  Object.assign([...cells], { wide, headings });

export const isBlock = (value: unknown): value is Block => Array.isArray(value) && "wide" in value;

/** A heading as it is compared: "How many?" is "how many". */
export const headingText = (cell: Cell): string =>
  typeof cell === "string"
    ? cell
        .toLowerCase()
        .replace(/\([^)]*\)|[?:.]/g, " ")
        .replace(/[-\s]+/g, " ")
        .trim()
    : "";

/** The headings of a block and the rows under them. */
export interface Headed {
  /** As they are compared; "" for a column without one. */
  readonly headings: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** How many rows of the block stand above these: 1 when its headings are in it, else 0. */
  readonly above: 0 | 1;
}

/**
 * Finds the headings of a block: its first row where two of its cells are among `known`, else the
 * headings of the page's columns. Refuses a block whose headings are not known, with the nearest, and
 * one of whose headings is a misspelling of a known one. `noun` is what the block is called.
 */
export function headed(block: Block, known: readonly string[], usual: string, noun: string): Headed {
  const rows = Array.from({ length: Math.ceil(block.length / block.wide) }, (_, i) =>
    block.slice(i * block.wide, (i + 1) * block.wide),
  );
  const first = (rows[0] ?? []).map(headingText);
  const page = block.headings.map(headingText);
  const count = (headings: readonly string[]) => headings.filter((one) => known.includes(one)).length;
  const inside = count(first) >= 2 || (count(first) === 1 && count(page) === 0);
  const headings = inside ? first : page;
  const near = (list: readonly string[]) =>
    list.flatMap((one) => {
      const meant = one === "" || known.includes(one) ? undefined : misspeltPhrase(one, known);
      return meant?.[0] === one[0] && meant !== undefined ? [{ one, meant }] : [];
    })[0];
  const misspelt = near(headings) ?? (count(headings) === 0 ? near(first) : undefined);
  if (misspelt)
    throw new Refusal(`${noun} has a column headed "${misspelt.one}"; is "${misspelt.meant}" meant?`);
  if (count(headings) === 0) throw new Refusal(`${noun} has no headings that are known here: ${usual}`);
  return { headings, rows: inside ? rows.slice(1) : rows, above: inside ? 1 : 0 };
}
