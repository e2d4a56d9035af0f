/** A formula in which each list is written as the columns that are read of it, so that HyperFormula waits for no other column. */
import type { Block } from "../book/address.ts";
import { formulaTree, isFormula, type Tree } from "../book/formula.ts";
import { blockAddress, fixed, isCell } from "../book/names.ts";
import type { Book } from "../book/shape.ts";
import { columnsRead, readsList } from "./columns-read.ts";
import { PARTS_OF_LIST } from "./list-parts.ts";
import { areaOf } from "./references.ts";

/** A block as a range, even where it is a single cell: HyperFormula gives the value of a cell, and no list, for "B2". */
function rangeText(book: Book, block: Block): string {
  const text = fixed(blockAddress(book, block));
  return isCell(block) ? `${text}:${text.slice(text.lastIndexOf("!") + 1)}` : text;
}

interface Narrowed {
  readonly span: readonly [number, number];
  readonly blocks: readonly Block[];
}

/** The formula of a cell of `page` with its lists narrowed; what is no formula, or reads no list, is returned as it is. */
export function withListsNarrowed(book: Book, formula: string, page: number): string {
  if (!isFormula(formula) || !readsList(formula)) return formula;
  const found = narrowedIn(book, formulaTree(formula), page);
  return found
    .toSorted((a, b) => b.span[0] - a.span[0])
    .reduce((text, { span: [from, to], blocks }) => {
      const ranges = blocks.map((block) => rangeText(book, block));
      const written = ranges.length === 1 ? ranges[0]! : `${PARTS_OF_LIST}(${ranges.join(";")})`;
      return text.slice(0, from) + written + text.slice(to);
    }, formula);
}

function narrowedIn(book: Book, tree: Tree, page: number): Narrowed[] {
  if (tree.is === "list") return tree.items.flatMap((item) => narrowedIn(book, item, page));
  if (tree.is !== "call" && tree.is !== "sign") return [];
  return tree.args.flatMap((arg, at): Narrowed[] => {
    if (!arg) return [];
    const area = tree.is === "call" ? areaOf(book, arg, page) : null;
    if (tree.is !== "call" || !area) return narrowedIn(book, arg, page);
    const blocks = columnsRead(book, tree, at, area);
    return blocks ? [{ span: tree.spans[at]!, blocks }] : [];
  });
}
