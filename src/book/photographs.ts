/** Small photographs kept in cells, as data URLs: what may be one, and how much of them a book holds. */
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "./shape.ts";

/** A photograph in characters; 40 kB of a picture are some 54,000. */
export const LONGEST_PHOTOGRAPH = 60_000;
/** All photographs of a book together, in characters: some 75 of them. */
export const MOST_PHOTOGRAPHS = 4_000_000;
export const LONGEST_PHOTOGRAPH_WORDS = 200;

/** JPEG, PNG or WebP; an SVG is a document that could hold anything. */
export const PHOTOGRAPH = /^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/]+=*$/;

/** How many photographs stand in cells of a book, or of one of its pages. */
export const photographCount = ({ pages }: Book, page?: number): number =>
  (page === undefined ? pages : pages.slice(page, page + 1)).reduce(
    (sum, { cells = {} }) => sum + Object.values(cells).filter(({ photograph }) => photograph).length,
    0,
  );

/** What is said of the photographs, in a sentence, when a file without pictures is exported; "" when the book has none. `holder` is the file: "a spreadsheet". */
export function photographsLeftOut(count: number, holder: string): string {
  if (count === 0) return "";
  return count === 1
    ? phrase`one photograph is left out, because ${holder} from Ellwand holds no pictures; it stays in the book`
    : phrase`${count} photographs are left out, because ${holder} from Ellwand holds no pictures; they stay in the book`;
}

/** The characters of all photographs of a book. */
export const photographsIn = (book: Book): number =>
  book.pages.reduce(
    (sum, { cells = {} }) =>
      Object.values(cells).reduce((all, { photograph = "" }) => all + photograph.length, sum),
    0,
  );

const megabytes = (characters: number): string => phrase`${Math.ceil(characters / 100_000) / 10} MB`;

/** Why a book can't hold the photographs that it would have next, in a sentence; null when it can, or has no more of them than before. */
export function photographsFault(before: Book, next: Book): string | null {
  const all = photographsIn(next);
  if (all <= MOST_PHOTOGRAPHS || all <= photographsIn(before)) return null;
  return phrase`the photographs of this book would take ${megabytes(all)}, and a book holds at most ${megabytes(MOST_PHOTOGRAPHS)} of them: take one away first`;
}
