/** A block of cells with headings, as a function that reads a list by its headings is given it. */
import type { Block, Cell, ListForm, ListRow } from "./define.ts";
import { remember, rememberWithObject, rememberWithObjects } from "./memo.ts";
import { misspeltPhrase } from "./nearest-word.ts";
import { phrase, type Words, written, writtenIn } from "./phrase.ts";
import { Refusal } from "./refusal.ts";

export const asBlock = (cells: readonly Cell[], wide: number, headings: readonly string[]): Block =>
  Object.assign([...cells], { wide, headings });

export const isBlock = (value: unknown): value is Block => Array.isArray(value) && "wide" in value;

/** A heading as it is compared: "How many?" is "how many". */
export const headingText = (cell: Cell): string => {
  if (typeof cell !== "string" || cell === "") return "";
  if (cell.length <= LONGEST_KEPT) return headingsCompared(cell, () => comparedHeading(cell));
  return OUTLINE.test(cell) ? "" : comparedHeading(cell);
};

/** A long text that begins like this is the outline of a piece, which is no heading. */
const OUTLINE = /^\s*m[\s\d.,+-]+[lhvcsqtaz][\s\d.,+-]/i;

/** Kept because a list is read again after each edit, with the headings that it had. Longer texts are seldom headings. */
const headingsCompared = remember<string, string>(2000);
const LONGEST_KEPT = 60;

const comparedHeading = (text: string): string =>
  text
    .toLowerCase()
    .replace(/\([^)]*\)|[?:.]/g, " ")
    .replace(/[-\s]+/g, " ")
    .trim();

/** The headings of a block and the rows under them. */
export interface Headed {
  /** As they are compared; "" for a column without one. */
  readonly headings: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** How many rows of the block stand above these: 1 when its headings are in it, else 0. */
  readonly above: 0 | 1;
}

/** The rows of a block, and what stands where its headings may be, as headings are compared. */
export interface BlockRows {
  readonly rows: readonly (readonly Cell[])[];
  /** The cells of the first row. */
  readonly first: readonly string[];
  /** The headings of the page's columns. */
  readonly page: readonly string[];
}

/** Kept because many formulas read the same list, each for one figure of it. */
const blocksRead = rememberWithObject<Block, BlockRows>();

export const rowsOfBlock = (block: Block): BlockRows =>
  blocksRead(block, () => {
    const rows = Array.from({ length: Math.ceil(block.length / block.wide) }, (_, i) =>
      block.slice(i * block.wide, (i + 1) * block.wide),
    );
    return { rows, first: (rows[0] ?? []).map(headingText), page: block.headings.map(headingText) };
  });

/** Which headings a block has: its first row where two of its cells are among `known`, else those of the page's columns. */
export function headingsAmong(
  first: readonly string[],
  page: readonly string[],
  known: readonly string[],
): { readonly headings: readonly string[]; readonly isInside: boolean } {
  const count = (headings: readonly string[]) => headings.filter((one) => known.includes(one)).length;
  const isInside = count(first) >= 2 || (count(first) === 1 && count(page) === 0);
  return { headings: isInside ? first : page, isInside };
}

/** The known heading that this one is a misspelling of; undefined when it is known, blank or some other word. */
export function misspeltHeading(one: string, known: readonly string[]): string | undefined {
  const meant = one === "" || known.includes(one) ? undefined : misspeltPhrase(one, known);
  return meant?.[0] === one[0] ? meant : undefined;
}

/** Kept because many formulas read the same list. */
const headingsFound = rememberWithObjects<Headed>();

/**
 * Finds the headings of a block, as `headingsAmong` says. Refuses a block whose headings are not known, with the nearest, and
 * one of whose headings is a misspelling of a known one. `noun` is what the block is called.
 */
export const headed = (block: Block, known: readonly string[], usual: Words, noun: Words): Headed =>
  headingsFound([block, known], "", () => findHeadings(block, known, usual, noun));

/** What the headings of a block come to. */
interface Recognised extends ReturnType<typeof headingsAmong> {
  readonly areKnown: boolean;
  /** The first heading that is a misspelling, and what it is one of. */
  readonly misspelt: { readonly one: string; readonly meant: string } | undefined;
}

/** Kept by the headings themselves: a list of which a figure has changed is another block with the same headings. */
const recognised = rememberWithObject<readonly string[], ReturnType<typeof remember<string, Recognised>>>();
const MOST_HEADINGS = 100;

function recognise({ first, page }: BlockRows, known: readonly string[]): Recognised {
  const memory = recognised(known, () => remember(MOST_HEADINGS));
  return memory(JSON.stringify([first, page]), () => {
    const { headings, isInside } = headingsAmong(first, page, known);
    const areKnown = headings.some((one) => known.includes(one));
    const near = (list: readonly string[]) =>
      list.flatMap((one) => {
        const meant = misspeltHeading(one, known);
        return meant === undefined ? [] : [{ one, meant }];
      })[0];
    return { headings, isInside, areKnown, misspelt: near(headings) ?? (areKnown ? undefined : near(first)) };
  });
}

function findHeadings(block: Block, known: readonly string[], usual: Words, noun: Words): Headed {
  const read = rowsOfBlock(block);
  const { headings, isInside: inside, areKnown, misspelt } = recognise(read, known);
  if (misspelt) {
    const at = read.first.indexOf(misspelt.one);
    throw new Refusal(
      phrase`${noun} has a column headed "${misspelt.one}"; is "${misspelt.meant}" meant?`,
      at < 0 ? undefined : { argument: block, cell: at },
    );
  }
  if (!areKnown) throw new Refusal(phrase`${noun} has no headings that are known here: ${usual}`);
  return { headings, rows: inside ? read.rows.slice(1) : read.rows, above: inside ? 1 : 0 };
}

/** Which column of a list has which heading, by field. Refuses two columns that mean the same. */
export function listColumns(
  headings: readonly string[],
  { columns, noun: called }: ListForm,
  fields: readonly string[] = Object.keys(columns),
): Map<string, number> {
  const found = new Map<string, number>();
  headings.forEach((heading, at) => {
    const field = fields.find((one) => columns[one]!.headings.includes(heading));
    if (field === undefined) return;
    const other = found.get(field);
    const noun = () => writtenIn(called);
    if (other !== undefined)
      throw new Refusal(
        headings[other] === heading
          ? phrase`${noun} has two columns headed "${heading}": keep one`
          : phrase`${noun} has two columns that mean the same, "${headings[other]!}" and "${heading}": keep one`,
      );
    found.set(field, at);
  });
  return found;
}

/** Kept so that the headings of one form are one object. */
const headingsOfForm = rememberWithObject<ListForm, readonly string[]>();

/** All headings by which the columns of a list are known. */
export const knownHeadings = (form: ListForm): readonly string[] =>
  headingsOfForm(form, () => Object.values(form.columns).flatMap(({ headings }) => headings));

/**
 * The headings and rows of a block that is this list, and which column is which field. Refuses headings that are
 * missing, twice or misspelt. Columns that are not among `fields` are passed over.
 */
export function listOf(
  block: Block,
  form: ListForm,
  fields: readonly string[] = Object.keys(form.columns),
): Headed & { readonly columns: Map<string, number> } {
  const usual = Object.values(form.columns)
    .filter(({ needed }) => needed)
    .map(({ headings }) => `"${headings[0]}"`);
  const found = headed(
    block,
    knownHeadings(form),
    () => phrase`write ${usual.join(", ")} over its columns`,
    () => writtenIn(form.noun),
  );
  const columns = listColumns(found.headings, form, fields);
  for (const [field, { needed, headings, about }] of Object.entries(form.columns))
    if (needed && fields.includes(field) && !columns.has(field))
      throw new Refusal(
        phrase`${writtenIn(form.noun)} has no column "${headings[0]!}": give that heading to the column with ${about}`,
      );
  return { ...found, columns };
}

/**
 * The rows of a list; `check` is given each cell that is not blank, with words for it, and gives its value. The fields
 * that are not among `fields` are null in every row.
 */
export function listRows(
  block: Block,
  form: ListForm,
  check: (name: Words, field: string, cell: Cell, at: number) => Cell,
  fields: readonly string[] = Object.keys(form.columns),
): readonly ListRow[] {
  const { headings, rows, columns, above } = listOf(block, form, fields);
  return rows.flatMap((row, i): ListRow[] => {
    const cells: Record<string, Cell> = {};
    const places: Record<string, number> = {};
    let blank = true;
    for (const field of Object.keys(form.columns)) {
      const column = columns.get(field);
      const cell = column === undefined ? null : (row[column] ?? null);
      if (column !== undefined) places[field] = (above + i) * block.wide + column;
      if (cell === null || String(cell).trim() === "") {
        cells[field] = null;
        continue;
      }
      blank = false;
      cells[field] = check(
        () => written`${headings[column!]!} in row ${i + 1} of ${writtenIn(form.noun)}`,
        field,
        cell,
        places[field]!,
      );
    }
    return blank ? [] : [{ number: i + 1, cells, places }];
  });
}
