/** Names that are taken from the labels beside or above the cells: offered first, then given all at once. */
import { phrase, plural } from "../../functions/phrase.ts";
import type { Block } from "../book/address.ts";
import { type LabelsIn, type NameProposals, namesFromLabels } from "../book/label-names.ts";
import { blockAddress, nameAt } from "../book/names.ts";
import { nameAll as nameBlocks } from "../book/naming.ts";
import type { Book } from "../book/shape.ts";
import { isFunction } from "../engine/function-names.ts";
import { namingFault } from "./names.ts";
import type { Command } from "./store.ts";

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
