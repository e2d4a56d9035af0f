/** What a person can do with the names of a book. */
import { phrase, plural } from "../../functions/phrase.ts";
import { type Block, type Place, pageReference } from "../book/address.ts";
import { type LabelsIn, type NameProposals, namesFromLabels } from "../book/label-names.ts";
import { blockAddress, blockOf, isCell, nameAt, nameFault, namesOf } from "../book/names.ts";
import { lengthened, nameBlock, nameAll as nameBlocks } from "../book/naming.ts";
import type { Book } from "../book/shape.ts";
import { isFunction } from "../engine/function-names.ts";
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

/** Gives names to cells and lists that have none, all at once; each as it was offered, or as it was changed then. */
export const nameAll = (
  namings: readonly { readonly block: Block; readonly name: string }[],
  of: number | null,
): Command => ({
  label: phrase`${plural(namings.length, "give a name", "give # names")}`,
  edit: (book) => {
    const seen = new Set<string>();
    for (const { block, name } of namings) {
      const fault = namingFault(book, block, name, of);
      if (fault) return { refusal: fault };
      const old = nameAt(book, block);
      if (old) return { refusal: phrase`${blockAddress(book, block)} has the name ${old.name} already` };
      if (seen.has(name.toLowerCase()))
        return { refusal: phrase`${name} is given twice; choose another name for one` };
      seen.add(name.toLowerCase());
    }
    return namings.length === 0 ? book : nameBlocks(book, namings, of);
  },
});

/** The names that the labels of a block offer, to be looked at before `nameAll` gives them. */
export const offeredNames = (book: Book, block: Block, of: number | null, by?: LabelsIn): NameProposals =>
  namesFromLabels(book, block, of, isFunction, by);

/** Gives every name that the labels of a block offer. */
export const nameFromLabels = (block: Block, of: number | null, by?: LabelsIn): Command => ({
  label: phrase`give names from labels`,
  edit: (book) => {
    const { names, left } = offeredNames(book, block, of, by);
    if (names.length > 0) return nameBlocks(book, names, of);
    const [first] = left;
    return {
      refusal: first
        ? phrase`no name to give: ${first.why}`
        : phrase`no labels here: select the labels and, at their right, the cells to name`,
    };
  },
});

/** Names a cell; "" takes its name away. */
export const nameCell = (place: Place, name: string): Command => nameList(blockOf(place), name);
