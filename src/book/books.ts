/**
 * Several books in one file, a JSON document:
 *
 *   { "ellwandBooks": 1, "books": [ BOOK, ... ] }
 *
 * `ellwandBooks` is the version of this format. Each BOOK is either a book exactly as its own file
 * has it, or a text in quotes: what was kept of a book that could not be read, letter for letter.
 */

import { phrase } from "../../functions/phrase.ts";

export const BOOKS_VERSION = 1;

function isJsonGroup(text: string): boolean {
  try {
    const data: unknown = JSON.parse(text);
    return typeof data === "object" && data !== null && !Array.isArray(data);
  } catch {
    return false;
  }
}

/** The file of several books, each given as the text of its own file. */
export function writeBooks(texts: readonly string[]): string {
  const books = texts.map((text) => (isJsonGroup(text) ? text.trim() : JSON.stringify(text)));
  return `{\n"ellwandBooks": ${BOOKS_VERSION},\n"books": [\n${books.join(",\n")}\n]\n}\n`;
}

/** Whether a file that begins so is one of several books. */
export const holdsBooks = (start: string): boolean => /^\uFEFF?\s*\{\s*"ellwandBooks"/.test(start);

/** The texts of the books in such a file, or a sentence when it can't be read. */
export function readBooks(file: string): readonly string[] | { readonly reason: string } {
  let data: { ellwandBooks: unknown; books?: unknown };
  try {
    data = JSON.parse(file.replace(/^\uFEFF/, ""));
  } catch {
    return { reason: phrase`this file of several books is cut off or damaged; look for a whole copy` };
  }
  const { ellwandBooks: version, books } = data;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    return { reason: phrase`the version of this file of several books must be a whole number from 1` };
  if (version > BOOKS_VERSION)
    return {
      reason: phrase`this file of several books was saved by a newer Ellwand (version ${version}, this one reads up to ${BOOKS_VERSION}); bring Ellwand up to date and open it again`,
    };
  if (!Array.isArray(books) || books.length === 0) return { reason: phrase`this file holds no books` };
  return books.map((book) => (typeof book === "string" ? book : `${JSON.stringify(book, null, 2)}\n`));
}
