/** The one door for books: text → book, or the reason why not in a sentence. */

import * as v from "valibot";
import { TAPE_MARKS } from "../../functions/fractions.ts";
import { phrase } from "../../functions/phrase.ts";
import { isTapeUnit, UNITS } from "../../functions/units.ts";
import { type Damage, damageText, quotedShort } from "./damage.ts";
import { isRowRun, rowRuns, rowsOfRuns } from "./hidden-rows.ts";
import { blockAddress, findBlock, nameFault } from "./names.ts";
import { LONGEST_PHOTOGRAPH, LONGEST_PHOTOGRAPH_WORDS, PHOTOGRAPH } from "./photographs.ts";
import {
  BLANK_COLUMN,
  type Book,
  COLUMN_KINDS,
  LONGEST,
  MOST_COLUMNS,
  MOST_DECIMALS,
  MOST_FROZEN,
  MOST_PAGES,
  MOST_ROWS,
  type Other,
  type Page,
  STAGES,
  WIDTHS,
} from "./shape.ts";
import { upgrade } from "./upgrades.ts";
import { whole } from "./whole.ts";
import { VERSION } from "./write.ts";

/** The longest text that is taken for a book at all, in characters. */
const MOST_TEXT = 100_000_000;

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));
const words = (most: number) => v.pipe(text(most), v.regex(/\S/));
const finite = v.pipe(v.number(), v.finite());
const count = v.pipe(v.number(), v.integer(), v.minValue(0));

const column = v.object({
  heading: text(LONGEST.heading),
  kind: v.picklist(COLUMN_KINDS),
  width: v.pipe(v.number(), v.minValue(WIDTHS[0]), v.maxValue(WIDTHS[1])),
  choices: v.optional(words(LONGEST.choices)),
});

const cellSettings = v.object({
  choices: v.optional(words(LONGEST.choices)),
  decimals: v.optional(v.pipe(count, v.maxValue(MOST_DECIMALS))),
  unit: v.optional(v.pipe(v.string(), v.check(isTapeUnit))),
  fitting: v.optional(words(LONGEST.fitting)),
  photograph: v.optional(v.pipe(v.string(), v.maxLength(LONGEST_PHOTOGRAPH), v.regex(PHOTOGRAPH))),
  photographWords: v.optional(text(LONGEST_PHOTOGRAPH_WORDS)),
});

const page = v.object({
  title: v.pipe(words(LONGEST.pageTitle), v.regex(/^[^[\]:*?/\\]+$/)),
  stage: v.picklist(STAGES),
  columns: v.pipe(v.array(column), v.minLength(1), v.maxLength(MOST_COLUMNS)),
  rows: v.pipe(
    v.array(v.pipe(v.array(text(LONGEST.typed)), v.maxLength(MOST_COLUMNS))),
    v.maxLength(MOST_ROWS),
  ),
  notes: v.optional(v.record(v.string(), text(LONGEST.note)), {}),
  names: v.optional(v.record(v.string(), v.string())),
  cells: v.optional(v.record(v.string(), cellSettings)),
  frozen: v.optional(v.pipe(count, v.maxValue(MOST_FROZEN))),
  hidden: v.optional(v.pipe(v.array(v.pipe(v.string(), v.check(isRowRun))), v.maxLength(MOST_ROWS))),
});

const placement = v.object({ piece: count, copy: count, cloth: count, turn: finite, x: finite, y: finite });
const origin = v.variant("by", [
  v.object({ by: v.literal("quick") }),
  v.object({
    by: v.literal("search"),
    seconds: v.pipe(v.number(), v.finite(), v.minValue(0)),
    proved: v.optional(v.boolean()),
  }),
  v.object({ by: v.literal("hand") }),
]);
const lay = v.object({
  placements: v.array(placement),
  length: finite,
  density: finite,
  origin: v.optional(origin),
  question: v.optional(v.string()),
});

const bookShape = v.object({
  title: words(LONGEST.title),
  about: v.optional(text(LONGEST.about), ""),
  unit: v.picklist(UNITS),
  mark: v.picklist(TAPE_MARKS),
  decimal: v.optional(v.picklist(["point", "comma"])),
  names: v.optional(v.record(v.string(), v.string()), {}),
  pages: v.pipe(v.array(page), v.minLength(1), v.maxLength(MOST_PAGES)),
  trials: v.optional(
    v.array(v.object({ title: text(LONGEST.title), cells: v.record(v.string(), text(LONGEST.typed)) })),
    [],
  ),
  lays: v.optional(v.record(v.string(), lay), {}),
});

export type Reading = { readonly book: Book } | { readonly reason: string };

/** Reads a book's file. Whatever the text, the answer is a book or a sentence; nothing is thrown. */
export function readBook(file: string): Reading {
  if (file.length > MOST_TEXT) {
    return {
      reason: phrase`this file is too large for a book: ${Math.round(file.length / 1e6)} million characters, the most is ${MOST_TEXT / 1e6} million`,
    };
  }
  if (file.trim() === "") return { reason: phrase`this file is empty; choose a book saved by Ellwand` };
  let data: unknown;
  try {
    // Some editors put a byte order mark before the text.
    data = JSON.parse(file.replace(/^\uFEFF/, ""));
  } catch {
    const ends = quotedShort(file.trimEnd().slice(-30));
    return {
      reason: isCut(file)
        ? phrase`this book is cut off: the file stops at ${ends}; look for a whole copy`
        : phrase`this is not a book: the text is not JSON, it begins with ${quotedShort(file.trimStart().slice(0, 30))}`,
    };
  }
  if (typeof data === "object" && data !== null && Object.hasOwn(data, "ellwandBooks")) {
    return {
      reason: phrase`this file holds several books; open it on the page, where each becomes a book of its own`,
    };
  }
  if (typeof data !== "object" || data === null || !Object.hasOwn(data, "ellwand")) {
    return { reason: phrase`this is not a book of Ellwand: it does not say "ellwand" and a version` };
  }
  const version = (data as { ellwand: unknown }).ellwand;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return { reason: phrase`this book's version must be a whole number from 1, not ${quotedShort(version)}` };
  }
  if (version > VERSION) {
    return {
      reason: phrase`this book was saved by a newer Ellwand (version ${version}, this one reads up to ${VERSION}); bring Ellwand up to date and open it again`,
    };
  }
  const raw = upgrade(data, version);
  const read = v.safeParse(bookShape, raw, { abortEarly: true });
  if (!read.success) return { reason: damageText(read.issues[0] as unknown as Damage, raw) };
  const all = whole(bookShape, raw);
  if (!("data" in all)) return { reason: damageText(all, raw) };
  const { other, ...known } = all.data as Book;
  const book: Book = { ...known, ...restOf(other) };
  const fault = nameFaults(book) ?? inconsistency(book);
  return fault ? { reason: fault } : { book: settled(book) };
}

/** The fields of a book that are not known here: all but the version, which stands before the book's own. */
function restOf(other: Other = {}): { readonly other?: Other } {
  const rest = Object.entries(other).filter(([key]) => key !== "ellwand");
  return rest.length > 0 ? { other: Object.fromEntries(rest) } : {};
}

/** Whether a text that is not JSON is the beginning of a book's file that was cut off. */
function isCut(file: string): boolean {
  if (!/^\uFEFF?\s*\{/.test(file)) return false;
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < file.length; i += 1) {
    const sign = file[i];
    if (quoted && sign === "\\") i += 1;
    else if (sign === '"') quoted = !quoted;
    else if (quoted) continue;
    else if (sign === "{" || sign === "[") depth += 1;
    else if (sign === "}" || sign === "]") depth -= 1;
    if (depth === 0) return false;
  }
  return true;
}

/** What is wrong with the names of the book and of its pages. */
function nameFaults(book: Book): string | null {
  const owners = [
    { who: phrase`this book`, names: book.names },
    ...book.pages.map(({ title, names = {} }) => ({ who: phrase`the page "${title}"`, names })),
  ];
  for (const { who, names } of owners) {
    const seen = new Set<string>();
    for (const name of Object.keys(names)) {
      const fault = nameFault(name);
      if (fault) return phrase`${who} has a cell name that can't be used: ${fault}`;
      if (seen.has(name.toLowerCase())) return phrase`${who} has two cells named ${name}`;
      seen.add(name.toLowerCase());
    }
  }
  return null;
}

/** What the shape alone can't say: titles used once, names pointing at cells of pages there are. */
function inconsistency(book: Book): string | null {
  const titles = new Set<string>();
  for (const { title } of book.pages) {
    if (titles.has(title.toLowerCase())) return phrase`this book has two pages called "${title}"`;
    titles.add(title.toLowerCase());
  }
  for (const { names = {} } of [book, ...book.pages]) {
    for (const [name, address] of Object.entries(names)) {
      const block = findBlock(book, address);
      if (!block || block.bottom >= MOST_ROWS || block.right >= MOST_COLUMNS)
        return phrase`the name ${name} points at ${quotedShort(address)}, which is not in this book`;
    }
  }
  for (const page of book.pages) {
    const twice = spelledTwice(page.notes, spellNote);
    if (twice) return phrase`the page "${page.title}" has two notes for the cell ${twice}`;
    const set = Object.entries(page.cells ?? {}).map(([address, one]) => [address, JSON.stringify(one)]);
    const twiceSet = spelledTwice(Object.fromEntries(set), spellNote);
    if (twiceSet) return phrase`the page "${page.title}" has two settings for the cell ${twiceSet}`;
  }
  for (const [i, { title, cells }] of book.trials.entries()) {
    const twice = spelledTwice(cells, (address) => spell(book, address));
    if (twice) return phrase`trial ${i + 1}, ${quotedShort(title)}, types two texts into the cell ${twice}`;
  }
  return null;
}

/** Two spellings of one cell under which different texts stand: 'B3, spelt "B3" and "$B$3"; take one of them out'. */
function spelledTwice(
  texts: Readonly<Record<string, string>>,
  spelt: (address: string) => string,
): string | null {
  const seen = new Map<string, string>();
  for (const [address, text] of Object.entries(texts)) {
    const cell = spelt(address);
    const first = seen.get(cell);
    if (first === undefined) seen.set(cell, address);
    else if (texts[first] !== text)
      return phrase`${cell}, spelt ${quotedShort(first)} and ${quotedShort(address)}; take one of them out of the file`;
  }
  return null;
}

/** The address of a cell or a block with its page, spelt one way; an address outside the book stays as it is. */
function spell(book: Book, address: string): string {
  const block = findBlock(book, address);
  return block ? blockAddress(book, block) : address;
}

/** The address of a note, spelt one way: "$b$3" is "B3". */
function spellNote(address: string): string {
  const found = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,5})$/.exec(address.trim());
  return found ? `${found[1]!.toUpperCase()}${found[2]}` : address;
}

/** The book with addresses spelt one way and a column for every typed cell, however the file was made. */
function settled(book: Book): Book {
  const spelt = (names: Book["names"]) =>
    Object.fromEntries(Object.entries(names).map(([name, address]) => [name, spell(book, address)]));
  const trials = book.trials.map((trial) => ({
    ...trial,
    cells: respelt(trial.cells, (at) => spell(book, at)),
  }));
  const pages = book.pages.map(({ names = {}, ...page }) =>
    wideEnough({
      ...page,
      notes: respelt(page.notes, spellNote),
      ...(page.cells && { cells: respelt(page.cells, spellNote) }),
      ...(page.hidden && { hidden: rowRuns(rowsOfRuns(page.hidden)) }),
      ...(Object.keys(names).length > 0 && { names: spelt(names) }),
    }),
  );
  const { decimal, ...rest } = book;
  const shown = decimal === "comma" ? { decimal } : {};
  return { ...rest, ...shown, names: spelt(book.names), trials, pages };
}

const respelt = <T>(texts: Readonly<Record<string, T>>, spelt: (address: string) => string) =>
  Object.fromEntries(Object.entries(texts).map(([address, text]) => [spelt(address), text]));

function wideEnough(page: Page): Page {
  const more = Math.max(0, ...page.rows.map((row) => row.length)) - page.columns.length;
  return more > 0 ? { ...page, columns: [...page.columns, ...Array(more).fill(BLANK_COLUMN)] } : page;
}
