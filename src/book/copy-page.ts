/** A page copied with its names, for another wearer. */
import { UNITS } from "../../functions/units.ts";
import { rowAndColumn } from "./address.ts";
import { withSettings } from "./cell-marks.ts";
import { addPage, renamePage, type as typed } from "./edit.ts";
import { everyName, isOnPage } from "./names.ts";
import { withMeanings } from "./naming.ts";
import type { Book, Page } from "./shape.ts";

/**
 * The book with a copy of page `index` after it, under another title. What the copy's formulas refer to on
 * their own page is on the copy; references to other pages stay. The names of the page's cells, the book's
 * among them, become names of the copy, so that its formulas use its own cells; on all other pages every
 * name goes on meaning what it meant. Trials stay with the page they were made for.
 */
export function copyPage(book: Book, index: number, title: string): Book {
  // A page with another title refers to itself by it: that is the copy, but for the book's names.
  const renamed = renamePage(book, index, title);
  const { names: own, ...page } = renamed.pages[index]!;
  const books = everyName(renamed).filter((one) => one.of === null && isOnPage(one, index));
  const names = { ...Object.fromEntries(books.map(({ name, address }) => [name, address])), ...own };
  const spelt = new Set(Object.keys(own ?? {}).map((name) => name.toLowerCase()));
  const kept = Object.entries(names).filter(
    ([name]) => Object.hasOwn(own ?? {}, name) || !spelt.has(name.toLowerCase()),
  );
  const copy: Page = { ...page, ...(kept.length > 0 && { names: Object.fromEntries(kept) }) };
  const settled = withMeanings(book, addPage(book, copy));
  const { pages } = settled;
  return { ...settled, pages: pages.slice(0, -1).toSpliced(index + 1, 0, pages.at(-1)!) };
}

/** A cell of a page that follows the fittings of the page's wearer, and what it holds without what was fitted. */
export interface OwnFitting {
  readonly address: string;
  readonly without: string;
}

/** The cells of a page that follow fittings, or began from a fitted figure, and follow them still. */
export const fittingsOfPage = ({ pages }: Book, index: number): readonly OwnFitting[] =>
  Object.entries(pages[index]?.cells ?? {}).flatMap(([address, { fitting }]) => {
    const at = rowAndColumn(address);
    if (fitting === undefined || !at) return [];
    return [{ address, without: withoutFitted(pages[index]!.rows[at.row]?.[at.column] ?? "") }];
  });

/**
 * The book in which a page follows no fittings: those of the wearer whom it was copied from are not another
 * wearer's. What a next version added to the formulas of these cells is taken away again.
 */
export function withoutFittings(book: Book, index: number): Book {
  const found = fittingsOfPage(book, index);
  const page = found.reduce(
    (one, { address }) => withSettings(one, address, { fitting: undefined }),
    book.pages[index]!,
  );
  return typed(
    { ...book, pages: book.pages.with(index, page) },
    found.map(({ address, without }) => ({ page: index, ...rowAndColumn(address)!, typed: without })),
  );
}

const FITTED = new RegExp(String.raw`^=\((.*)\)[-+](?:${UNITS.join("|")})\([\d.,]+\)$`, "is");

/** A formula without the lengths that next versions added to it: "=(waist)-IN(0.25)" is "=waist". */
function withoutFitted(formula: string): string {
  const inner = FITTED.exec(formula.trim())?.[1];
  if (inner === undefined) return formula;
  let open = 0;
  for (const sign of inner) {
    if (sign === "(") open += 1;
    if (sign === ")") open -= 1;
    // The first bracket does not go with the last: the formula is a sum of another kind.
    if (open < 0) return formula;
  }
  return withoutFitted(`=${inner}`);
}
