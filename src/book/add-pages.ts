/** The pages of one book added to another, so that nothing of either means something else than before. */

import { addPage, renamePage } from "./edit.ts";
import { findBlock, nameInBook } from "./names.ts";
import { nameBlock } from "./naming.ts";
import { type Book, LONGEST } from "./shape.ts";

/** A text as part of a name: "the widow" → "the_widow". */
const asName = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-zà-öø-ʯ0-9]+/g, "_")
    .replace(/^_+|_+$/g, "");

/** The first of "text, label", "text 2", "text 3", … that is not taken. */
function free(first: string, isTaken: (text: string) => boolean, number: (i: number) => string): string {
  let found = first;
  for (let i = 2; isTaken(found); i += 1) found = number(i);
  return found;
}

/**
 * Adds the pages of `other`, which measures in the same unit, after those of `book`. A page or a name
 * that both have gets `label` added in what comes, such as the wearer: "Draft" → "Draft, widow",
 * waist → waist_widow; formulas follow. Names, notes and trials come along.
 */
export function addPages(book: Book, other: Book, label: string): Book {
  const titles = new Set(book.pages.map(({ title }) => title.toLowerCase()));
  let coming = other;
  for (const [index, { title }] of other.pages.entries()) {
    if (!titles.has(title.toLowerCase())) continue;
    const others = new Set(coming.pages.map((page) => page.title.toLowerCase()));
    const isTaken = (text: string) => titles.has(text.toLowerCase()) || others.has(text.toLowerCase());
    const most = LONGEST.pageTitle - 5;
    const plain = label.replace(/[[\]:*?/\\]/g, " ").trim();
    const first = plain ? `${title}, ${plain}`.slice(0, most) : title;
    coming = renamePage(
      coming,
      index,
      free(first, isTaken, (i) => `${title.slice(0, most)} ${i}`),
    );
  }
  for (const [name, address] of Object.entries(coming.names)) {
    if (nameInBook(book, name) === undefined) continue;
    const isTaken = (text: string) =>
      nameInBook(book, text) !== undefined || nameInBook(coming, text) !== undefined;
    const part = asName(label).slice(0, 30);
    const stem = part ? `${name.slice(0, 25)}_${part}` : name.slice(0, 50);
    const unique = free(part ? stem : name, isTaken, (i) => `${stem}_${i}`);
    coming = nameBlock(coming, findBlock(coming, address)!, unique, null);
  }
  const withPages = coming.pages.reduce((next, page) => addPage(next, page), book);
  return {
    ...withPages,
    names: { ...book.names, ...coming.names },
    trials: [...book.trials, ...coming.trials],
  };
}
