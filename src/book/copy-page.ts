/** A page copied with its names, for another wearer. */
import { addPage, renamePage } from "./edit.ts";
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
