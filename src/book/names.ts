/**
 * Names: what they stand for and which one a formula means. A name stands for a cell, a block,
 * whole columns or whole rows. It belongs to the book or to one page. A formula that uses a name
 * plainly means the name of its own page, else the book's, else the one of the only page that has it;
 * `Page!name`, written like an address, means the name of that page.
 */

import { rememberWithObject } from "../../functions/memo.ts";
import { phrase } from "../../functions/phrase.ts";
import {
  type Block,
  cellAddress,
  columnLetters,
  columnNumber,
  findPlace,
  fullAddress,
  type Place,
  pageReference,
} from "./address.ts";
import { isFormula, tokens } from "./formula.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS } from "./shape.ts";

/** A name and what it stands for. */
export interface Named {
  readonly name: string;
  /** The page it belongs to; null for a name of the whole book. */
  readonly of: number | null;
  /** "Measure!C4", "Cut!A2:B9", "Cut!A:C" or "Cut!2:3". */
  readonly address: string;
  readonly block: Block;
}

const ENDS = /^(\$?[A-Za-z]{1,3})?(\$?\d{1,6})?$/;

/** The block of "Cut!A2:B9", "Cut!A:C", "Cut!2:3" or a single cell "Cut!A2"; null when the book has no such block. */
export function findBlock(book: Book, address: string): Block | null {
  const cut = /^(.+!)([^!:]+):([^!:]+)$/.exec(address.trim());
  if (!cut) {
    const place = findPlace(book, address);
    return place && blockOf(place);
  }
  const [, page, first, last] = cut as unknown as [string, string, string, string];
  const home = findPlace(book, `${page}A1`);
  const [, fromColumn, fromRow] = ENDS.exec(first) ?? [];
  const [, toColumn, toRow] = ENDS.exec(last) ?? [];
  const alike = !fromColumn === !toColumn && !fromRow === !toRow && (fromColumn || fromRow);
  if (!home || !alike) return null;
  const column = (text: string) => columnNumber(text.replace("$", ""));
  const row = (text: string) => Number(text.replace("$", "")) - 1;
  const columns = fromColumn ? [column(fromColumn), column(toColumn!)] : [0, MOST_COLUMNS - 1];
  const rows = fromRow ? [row(fromRow), row(toRow!)] : [0, MOST_ROWS - 1];
  const block = {
    page: home.page,
    top: Math.min(...rows),
    left: Math.min(...columns),
    bottom: Math.max(...rows),
    right: Math.max(...columns),
  };
  return block.top < 0 ? null : block;
}

/** The block of a single cell. */
export const blockOf = ({ page, row, column }: Place): Block => ({
  page,
  top: row,
  left: column,
  bottom: row,
  right: column,
});

/** Whether a block is a single cell. */
export const isCell = ({ top, left, bottom, right }: Block): boolean => top === bottom && left === right;

/** A block as it is written without its page: "A2", "A2:B9", "A:C", "2:3". */
export function blockText({ top, left, bottom, right }: Block): string {
  if (top === 0 && bottom === MOST_ROWS - 1) return `${columnLetters(left)}:${columnLetters(right)}`;
  if (left === 0 && right === MOST_COLUMNS - 1) return `${top + 1}:${bottom + 1}`;
  const first = cellAddress(top, left);
  return top === bottom && left === right ? first : `${first}:${cellAddress(bottom, right)}`;
}

/** "Cut!A2:B9". */
export const blockAddress = (book: Book, block: Block): string =>
  `${pageReference(book.pages[block.page]!.title)}!${blockText(block)}`;

type Names = Book["names"];

interface NameIndex {
  /** By the name in small letters. */
  readonly spelt: ReadonlyMap<string, string>;
  readonly byAddress: ReadonlyMap<string, string>;
  /** Whether some of the names stand for more than one cell. */
  readonly lists: boolean;
}

/** Names are looked up far more often than they change. */
const remembered = rememberWithObject<Names, NameIndex>();

const indexOf = (names: Names): NameIndex =>
  remembered(names, () => {
    const entries = Object.entries(names);
    return {
      spelt: new Map(entries.map(([name]) => [name.toLowerCase(), name])),
      // The first name of a cell is its name.
      byAddress: new Map(entries.map(([name, address]) => [address, name] as const).reverse()),
      lists: entries.some(([, address]) => isList(address)),
    };
  });

/** Whether the address of a name is that of a list: more than one cell. */
export const isList = (address: string): boolean => address.lastIndexOf(":") > address.lastIndexOf("!");

/** The names of the book (`of` is null) or of a page; empty for a page without names. */
export const namesOf = (book: Book, of: number | null): Names =>
  (of === null ? book.names : book.pages[of]?.names) ?? NONE;

const NONE: Names = {};

/** The name of the whole book as the book spells it, whatever the case typed. */
export const nameInBook = (book: Book, text: string): string | undefined =>
  indexOf(book.names).spelt.get(text.toLowerCase());

function named(book: Book, of: number | null, text: string): Named | null {
  const names = of === null ? book.names : book.pages[of]?.names;
  const name = names && indexOf(names).spelt.get(text);
  const address = name === undefined ? undefined : names![name]!;
  const block = address === undefined ? null : findBlock(book, address);
  return block && { name: name!, of, address: address!, block };
}

const WITH_PAGE = /^(?:'((?:[^']|'')+)'|([^'!]+))!(.+)$/;

/**
 * What a name means in a formula on `page` (null: on no page): the one Named, an empty list when
 * there is no such name, or those of several pages when it is not clear which is meant.
 */
export function namesMeant(book: Book, text: string, page: number | null): readonly Named[] {
  const found = WITH_PAGE.exec(text);
  if (found) {
    const home = findPlace(book, `${text.slice(0, text.lastIndexOf("!"))}!A1`)?.page;
    const own = home === undefined ? null : named(book, home, found[3]!.toLowerCase());
    return own ? [own] : [];
  }
  const lower = text.toLowerCase();
  const near = (page === null ? null : named(book, page, lower)) ?? named(book, null, lower);
  if (near) return [near];
  return book.pages.flatMap((one, i) => (one.names ? (named(book, i, lower) ?? []) : []));
}

/** The one thing that a name means in a formula on `page`, or null. */
export function nameMeant(book: Book, text: string, page: number | null): Named | null {
  const meant = namesMeant(book, text, page);
  return meant.length === 1 ? meant[0]! : null;
}

/** Every name of the book, the book's own first, then page by page. */
export function everyName(book: Book): Named[] {
  const all = (of: number | null) =>
    Object.keys(namesOf(book, of)).flatMap((name) => named(book, of, name.toLowerCase()) ?? []);
  return [...all(null), ...book.pages.flatMap((page, i) => (page.names ? all(i) : []))];
}

/** Whether a name stands for cells of a page. */
export const isOnPage = ({ block }: Named, page: number): boolean => block.page === page;

/** The named cells of the book, lists left out, each with the name as it is written on no page. */
export const namedCells = (book: Book): { name: string; place: Place }[] =>
  everyName(book).flatMap((one) =>
    isCell(one.block) ? [{ name: nameText(book, one, null), place: cornerOf(one.block) }] : [],
  );

/** How a formula on `page` (null: on no page) writes a name: plainly where the plain name means it, else with its page; a name of the book may need its address. */
export function nameText(
  book: Book,
  { name, of, address }: Omit<Named, "block">,
  page: number | null,
): string {
  if (nameMeant(book, name, page)?.of === of) return name;
  return of === null ? address : `${pageReference(book.pages[of]!.title)}!${name}`;
}

/** Where a named cell, "Draft!B3", or "B3" on the page given (else the first), is; null when there is no such single cell. */
export function lookUp(book: Book, text: string, page?: number): Place | null {
  const word = text.trim();
  const address = /^(.*!)?\$?[A-Za-z]{1,3}\$?\d{1,6}$/.exec(word);
  if (address?.[1]) return findPlace(book, word);
  if (address) {
    const on = book.pages[page ?? 0];
    return on ? findPlace(book, `${pageReference(on.title)}!${word}`) : null;
  }
  const meant = nameMeant(book, word, page ?? null);
  return meant && isCell(meant.block) ? cornerOf(meant.block) : null;
}

/** The upper left cell of a block. */
export const cornerOf = ({ page, top, left }: Block): Place => ({ page, row: top, column: left });

/** The name at exactly this block: its page's own, else the book's, else another page's. */
export function nameAt(book: Book, block: Block): Named | null {
  if (!book.pages[block.page]) return null;
  const address = blockAddress(book, block);
  const of = [block.page, null, ...book.pages.keys()].find(
    (one) => indexOf(namesOf(book, one)).byAddress.get(address) !== undefined,
  );
  return of === undefined
    ? null
    : named(book, of, indexOf(namesOf(book, of)).byAddress.get(address)!.toLowerCase());
}

/** The name of a cell, without its page, if it has one. */
export function nameOf(book: Book, place: Place): string | undefined {
  const page = book.pages[place.page];
  if (!page) return undefined;
  const address = fullAddress(book, place);
  const own = page.names && indexOf(page.names).byAddress.get(address);
  const books = own ?? indexOf(book.names).byAddress.get(address);
  if (books !== undefined) return books;
  for (const { names } of book.pages) {
    const other = names && indexOf(names).byAddress.get(address);
    if (other !== undefined) return other;
  }
  return undefined;
}

/** How a formula on `page` (null: on no page) refers to a cell by its name; null when the cell has no name. */
export function nameFor(book: Book, place: Place, page: number | null): string | null {
  if (nameOf(book, place) === undefined) return null;
  const at = nameAt(book, blockOf(place));
  return at && nameText(book, at, page);
}

/** Whether two books have the very same names, on their pages too. */
export const sameNames = (a: Book, b: Book): boolean =>
  a.names === b.names &&
  a.pages.length === b.pages.length &&
  a.pages.every((page, i) => page.names === b.pages[i]!.names);

const hasWrittenOut = ({ names, pages }: Book): boolean =>
  indexOf(names).lists || pages.some((page) => page.names !== undefined);

/**
 * A formula of `page` in which every name is written out, as an address that a copy does not move,
 * but for those of the book's own single cells, which the engine knows by their names.
 */
export function writtenOut(book: Book, formula: string, page: number): string {
  if (!isFormula(formula) || !hasWrittenOut(book)) return formula;
  return tokens(formula)
    .map(({ kind, text }) => {
      const meant = kind === "name" ? nameMeant(book, text, page) : null;
      return meant && (meant.of !== null || !isCell(meant.block)) ? fixed(meant.address) : text;
    })
    .join("");
}

/** Whether every formula of two books has its names written out alike, as far as names go. */
export function sameWrittenOut(old: Book, next: Book): boolean {
  if (sameNames(old, next)) return true;
  const own = (book: Book) => book.pages.some((page) => page.names !== undefined);
  if (own(old) || own(next)) return false;
  const lists = ({ names }: Book) =>
    indexOf(names).lists ? JSON.stringify(Object.entries(names).filter(([, at]) => isList(at))) : "";
  return lists(old) === lists(next);
}

/** "Cut!A2:B9" with every part fixed: "Cut!$A$2:$B$9". */
export function fixed(address: string): string {
  const cut = address.lastIndexOf("!") + 1;
  return address.slice(0, cut) + address.slice(cut).replace(/([A-Za-z]+|\d+)/g, "$$$1");
}

/** Why a text can't be a name, or null when it can. */
export function nameFault(name: string): string | null {
  if (!/^[A-Za-zÀ-ÖØ-öø-ʯ_][A-Za-zÀ-ÖØ-öø-ʯ0-9_]*$/.test(name)) {
    return phrase`a name has letters, digits and _ only and begins with a letter, unlike "${name.slice(0, 40)}"`;
  }
  const figures = /^([A-Za-z]+)(\d+)$/.exec(name);
  if (figures)
    return phrase`"${name}" reads like a cell's address; write it otherwise, such as ${figures[1]!}_${figures[2]!}`;
  if (/^(true|false|r\d*c\d*|__proto__|constructor|prototype)$/i.test(name))
    return phrase`"${name}" has a meaning of its own here; choose another`;
  return name.length > 60 ? phrase`a name has at most 60 letters, not ${name.length}` : null;
}
