/**
 * Names made from labels: of a block of labels and values, each value gets its label's words for a name;
 * of a block with headings, each column below its heading does.
 */
import { phrase } from "../../functions/phrase.ts";
import type { Block } from "./address.ts";
import { isFormula } from "./formula.ts";
import { blockAddress, nameAt, nameFault, namesOf } from "./names.ts";
import { type Book, MOST_COLUMNS, MOST_ROWS, typedAt } from "./shape.ts";

/** What the labels name: the value in their row, the column below them, or, one label, the whole block. */
export type LabelsIn = "rows" | "headings" | "block";

/** A name for a cell or a list. */
export interface NameProposal {
  readonly label: string;
  readonly name: string;
  readonly block: Block;
  /** What was changed to make a name of the label, and why; null when nothing but spaces and signs. */
  readonly changed: string | null;
}

export interface NameProposals {
  readonly by: LabelsIn;
  readonly names: readonly NameProposal[];
  /** The labels that get no name, and why. */
  readonly left: readonly { readonly label: string; readonly why: string }[];
}

const LONGEST_PROPOSED = 40;

const isWord = (text: string) => /\p{L}/u.test(text) && !isFormula(text) && !/^\s*\d/.test(text);

/**
 * The labels' way in a block: headings where its first row is all words and it has three columns or more, else
 * rows. A single column of several cells is a list: its one label is its heading.
 */
export function labelsIn(book: Book, { page, top, left, bottom, right }: Block): LabelsIn {
  if ((left === right && bottom > top) || isBand({ top, left, bottom, right })) return "block";
  const words = Array.from({ length: right - left + 1 }, (_, i) => typedAt(book, page, top, left + i)).every(
    isWord,
  );
  return words && right - left >= 2 && bottom > top ? "headings" : "rows";
}

/** The words of a label as a name, "Waist girth:" → "waist_girth"; "" when it has neither letters nor digits. */
const asName = (label: string): string =>
  label
    .normalize("NFC")
    .toLowerCase()
    .replace(/[^a-zà-öø-ʯ0-9]+/g, "_")
    .replace(/^_+|_+$/g, "");

/** Cut at the end of a word. */
function short(name: string): string {
  if (name.length <= LONGEST_PROPOSED) return name;
  const cut = name.slice(0, LONGEST_PROPOSED + 1);
  return cut.includes("_") ? cut.slice(0, cut.lastIndexOf("_")) : name.slice(0, LONGEST_PROPOSED);
}

/** A name that can be given, and what had to be changed for it. */
function usable(name: string, isFunction: (name: string) => boolean): readonly [string, string | null] {
  const cut = short(name);
  const cell = /^([a-z]+)(\d+)$/.exec(cut);
  if (cell) return [`${cell[1]}_${cell[2]}`, phrase`"${cut}" reads like a cell's address`];
  if (/^\d/.test(cut)) return [`_${cut}`, phrase`a name begins with a letter or _`];
  if (isFunction(cut.toUpperCase())) return [`${cut}_figure`, phrase`${cut.toUpperCase()} is a function`];
  if (nameFault(cut) !== null)
    return [`${cut}_figure`, phrase`"${cut}" has a meaning of its own in formulas`];
  return [cut, cut === name ? null : phrase`the label is long`];
}

/**
 * The names that the labels of a block offer, for the book (`of` is null) or a page. In rows a label names the
 * cell at its right. A name that is taken gets a number; a cell that has a name keeps it.
 */
export function namesFromLabels(
  book: Book,
  block: Block,
  of: number | null,
  isFunction: (name: string) => boolean,
  by: LabelsIn = labelsIn(book, block),
): NameProposals {
  const names: NameProposal[] = [];
  const left: { label: string; why: string }[] = [];
  const owned = namesOf(book, of);
  const holders = new Map(Object.entries(owned).map(([name, address]) => [name.toLowerCase(), address]));
  for (const { label, target } of labelled(book, block, by)) {
    const plain = asName(label);
    const old = nameAt(book, target);
    if (plain === "") {
      if (label !== "") left.push({ label, why: phrase`it has no letters` });
    } else if (old) left.push({ label, why: phrase`${blockAddress(book, target)} has the name ${old.name}` });
    else {
      const [first, changed] = usable(plain, isFunction);
      let name = first;
      for (let i = 2; holders.has(name); i += 1) name = `${first}_${i}`;
      const taken = name === first ? null : phrase`${first} is the name of ${holders.get(first) ?? ""}`;
      holders.set(name, blockAddress(book, target));
      names.push({
        label,
        name,
        block: target,
        changed: [changed, taken].filter(Boolean).join("; ") || null,
      });
    }
  }
  return { by, names, left };
}

/** Each label of a block, and the cells that it labels. */
function labelled(book: Book, { page, top, left, bottom, right }: Block, by: LabelsIn) {
  const text = (row: number, column: number) => {
    const typed = typedAt(book, page, row, column).trim();
    return isFormula(typed) ? "" : typed;
  };
  if (by === "block") return [labelOfBlock(book, { page, top, left, bottom, right })];
  if (by === "headings")
    return Array.from({ length: right - left + 1 }, (_, i) => ({
      label: text(top, left + i),
      target: { page, top: Math.min(top + 1, bottom), bottom, left: left + i, right: left + i },
    }));
  return Array.from({ length: bottom - top + 1 }, (_, i) => ({
    label: text(top + i, left),
    target: { page, top: top + i, bottom: top + i, left: left + 1, right: left + 1 },
  }));
}

/** Whether a block is whole columns or whole rows. */
const isBand = ({ top, left, bottom, right }: Omit<Block, "page">): boolean =>
  (top === 0 && bottom === MOST_ROWS - 1) || (left === 0 && right === MOST_COLUMNS - 1);

/**
 * The one label of a block: the heading in the first cell of a single column, which is then no part of the list, else
 * the text above the block, else its column's heading, else the title of its page.
 */
function labelOfBlock(book: Book, block: Block) {
  const { page, top, left, bottom, right } = block;
  const first = typedAt(book, page, top, left).trim();
  if (left === right && bottom > top && isWord(first) && !isBand(block)) {
    const isWords = Array.from({ length: bottom - top }, (_, i) =>
      typedAt(book, page, top + 1 + i, left),
    ).every((typed) => typed.trim() === "" || isWord(typed));
    if (!isWords) return { label: first, target: { ...block, top: top + 1 } };
  }
  const above = top > 0 ? typedAt(book, page, top - 1, left).trim() : "";
  const { title, columns } = book.pages[page]!;
  const heading = left === right ? (columns[left]?.heading.trim() ?? "") : "";
  return { label: isWord(above) ? above : heading || title, target: block };
}
