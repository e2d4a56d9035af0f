/** Naming: giving a name to a cell or a list, changing it and taking it away. */
import { type Block, type Place, pageReference } from "./address.ts";
import { everywhere } from "./edit.ts";
import { tokens } from "./formula.ts";
import {
  blockAddress,
  blockOf,
  findBlock,
  isCell,
  type Named,
  nameAt,
  nameMeant,
  namesMeant,
  namesOf,
  nameText,
} from "./names.ts";
import type { Book } from "./shape.ts";

/** The book with these names for its own (`of` is null) or for a page's. */
export function withNames(book: Book, of: number | null, names: Book["names"]): Book {
  if (of === null) return { ...book, names };
  const pages = book.pages.map((page, i) => {
    if (i !== of) return page;
    const { names: _, ...rest } = page;
    return Object.keys(names).length > 0 ? { ...rest, names } : rest;
  });
  return { ...book, pages };
}

const without = (names: Book["names"], name: string): Book["names"] =>
  Object.fromEntries(Object.entries(names).filter(([one]) => one.toLowerCase() !== name.toLowerCase()));

/**
 * Names a block, renames it (formulas follow) or, with "", takes its name away. The name belongs to
 * the book (`of` is null) or to a page. No formula comes to mean other cells by it: where a name would,
 * the page or the address of what it meant is written instead.
 */
export function nameBlock(book: Book, block: Block, name: string, of: number | null): Book {
  const old = nameAt(book, block);
  const cleared = old ? withNames(book, old.of, without(namesOf(book, old.of), old.name)) : book;
  if (name === "") return withMeanings(book, cleared);
  const names = { ...without(namesOf(cleared, of), name), [name]: blockAddress(book, block) };
  return withMeanings(book, withNames(cleared, of, names), old && { old, name, of });
}

/** The book with a list that reaches down to row `bottom`: every formula that uses its name means the longer list. Null when there is no such list. */
export function lengthened(book: Book, name: string, of: number | null, bottom: number): Book | null {
  const names = namesOf(book, of);
  const block = Object.hasOwn(names, name) ? findBlock(book, names[name]!) : null;
  if (!block || isCell(block) || bottom < block.bottom) return null;
  return withNames(book, of, { ...names, [name]: blockAddress(book, { ...block, bottom }) });
}

/** As `nameBlock`, for a cell: a new name belongs to where its old one did, else to the book. */
export const nameCell = (book: Book, place: Place, name: string): Book =>
  nameBlock(book, blockOf(place), name, nameAt(book, blockOf(place))?.of ?? null);

/** Gives names to blocks without a name, all in the book (`of` is null) or on a page. */
export function nameAll(
  book: Book,
  namings: readonly { readonly block: Block; readonly name: string }[],
  of: number | null,
): Book {
  const names = namings.map(({ block, name }) => [name, blockAddress(book, block)]);
  return withMeanings(book, withNames(book, of, { ...namesOf(book, of), ...Object.fromEntries(names) }));
}

interface Renaming {
  readonly old: Named;
  readonly name: string;
  readonly of: number | null;
}

/**
 * The book `next`, which has other names than `book`, the same cells and perhaps pages after them, with every name in its
 * formulas meaning what it meant in `book`. A name that meant nothing is left alone, and so is one
 * whose name was taken away.
 */
export function withMeanings(book: Book, next: Book, renaming?: Renaming | null): Book {
  const pageOf = new Map(book.pages.map(({ title }, i) => [title, i]));
  return everywhere(next, (formula, home) => {
    const page = pageOf.get(home);
    if (page === undefined) return formula;
    return tokens(formula)
      .map(({ kind, text }) => {
        if (kind !== "name") return text;
        const was = nameMeant(book, text, page);
        if (!was) return text;
        const renamed = renaming && was.of === renaming.old.of && was.name === renaming.old.name;
        if (renamed && renaming.of !== null && text.includes("!"))
          return `${pageReference(next.pages[renaming.of]!.title)}!${renaming.name}`;
        if (renamed) return nameText(next, { ...was, name: renaming.name, of: renaming.of }, page);
        const is = namesMeant(next, text, page);
        if (is.length === 0 || (is.length === 1 && is[0]!.address === was.address)) return text;
        const still = namesOf(next, was.of)[was.name] === was.address;
        return still && was.of !== null ? nameText(next, was, page) : was.address;
      })
      .join("");
  });
}
