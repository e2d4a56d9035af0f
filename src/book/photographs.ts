/** Small photographs kept in cells, as data URLs: what may be one, and how much of them a book holds. */
import type { Book } from "./shape.ts";

/** A photograph in characters; 40 kB of a picture are some 54,000. */
export const LONGEST_PHOTOGRAPH = 60_000;
/** All photographs of a book together, in characters: some 75 of them. */
export const MOST_PHOTOGRAPHS = 4_000_000;
export const LONGEST_PHOTOGRAPH_WORDS = 200;

/** JPEG, PNG or WebP; an SVG is a document that could hold anything. */
export const PHOTOGRAPH = /^data:image\/(?:jpeg|png|webp);base64,[A-Za-z0-9+/]+=*$/;

/** The characters of all photographs of a book. */
export const photographsIn = (book: Book): number =>
  book.pages.reduce(
    (sum, { cells = {} }) =>
      Object.values(cells).reduce((all, { photograph = "" }) => all + photograph.length, sum),
    0,
  );
