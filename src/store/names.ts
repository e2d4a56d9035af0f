/** What a person can do with the names of a book. */
import { phrase } from "../../functions/phrase.ts";
import { type Block, type Place, pageReference } from "../book/address.ts";
import { blockAddress, blockOf, isCell, nameAt, nameFault, namesOf } from "../book/names.ts";
import { lengthened, nameBlock } from "../book/naming.ts";
import type { Book } from "../book/shape.ts";
import type { Command } from "./store.ts";

/** Why a block can't have this name among those of the book (`of` is null) or of a page; null when it can. */
export function namingFault(book: Book, block: Block, name: string, of: number | null): string | null {
  const fault = nameFault(name);
  if (fault) return fault;
  const names = namesOf(book, of);
  const holder = Object.keys(names).find((one) => one.toLowerCase() === name.toLowerCase());
  if (holder === undefined || names[holder] === blockAddress(book, block)) return null;
  const held = names[holder]!;
  return of === null
    ? phrase`${holder} is already the name of ${held}; choose another name, or let this one belong to its page`
    : phrase`${holder} is already the name of ${held} on the page ${pageReference(book.pages[of]!.title)}; choose another name`;
}

/**
 * Names a cell, a block, whole columns or whole rows; "" takes the name away. The name belongs to the
 * book (`of` is null) or to a page; left out, to where the former name belonged, else to the book.
 */
export const nameList = (block: Block, name: string, of?: number | null): Command => ({
  label:
    name === ""
      ? phrase`remove a name`
      : isCell(block)
        ? phrase`name a cell ${name}`
        : phrase`name a list ${name}`,
  edit: (book) => {
    const old = nameAt(book, block);
    const owner = of === undefined ? (old?.of ?? null) : of;
    if (name === (old?.name ?? "") && (name === "" || owner === old?.of)) return book;
    const fault = name === "" ? null : namingFault(book, block, name, owner);
    return fault ? { refusal: fault } : nameBlock(book, block, name, owner);
  },
});

/** Lets a list of the book (`of` is null) or of a page count what stands directly beneath it, down to row `bottom`. */
export const lengthenList = (name: string, of: number | null, bottom: number): Command => ({
  label: phrase`lengthen ${name} to row ${bottom + 1}`,
  edit: (book) =>
    lengthened(book, name, of, bottom) ?? {
      refusal: phrase`there is no list ${name} that ends above that row`,
    },
});

/** Names a cell; "" takes its name away. */
export const nameCell = (place: Place, name: string): Command => nameList(blockOf(place), name);
