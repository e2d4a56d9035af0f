/** The cells that a document is asked for by name or address. */

import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import type { Place } from "../book/address.ts";
import { cornerOf, lookUp, namedCells, namesMeant } from "../book/names.ts";
import { typedAt } from "../book/shape.ts";
import type { Engine } from "../engine/engine.ts";
import type { NotPrinted } from "./kinds.ts";

/** Null when no cells are asked for. A name of a list means each of its cells. */
export function cellsAsked(
  engine: Engine,
  cells: readonly string[] | undefined,
): Place[] | NotPrinted | null {
  if (!cells || cells.length === 0) return null;
  const { book } = engine;
  const places: Place[] = [];
  for (const text of cells) {
    const place = lookUp(book, text);
    const [named, other] = namesMeant(book, text, null);
    if (place) places.push(place);
    else if (named && !other) {
      const { page, top, bottom, left, right } = named.block;
      const rows = Math.min(bottom, book.pages[page]!.rows.length - 1);
      for (let row = top; row <= rows; row += 1)
        for (let column = left; column <= Math.min(right, book.pages[page]!.columns.length - 1); column += 1)
          if (typedAt(book, page, row, column).trim() !== "") places.push({ page, row, column });
      if (places.length === 0) places.push(cornerOf(named.block));
    } else {
      const names = namedCells(book).map(({ name }) => name);
      const near = nearestWord(text, names);
      const example = named && `${book.pages[named.block.page]!.title}!${text}`;
      return {
        reason: example
          ? phrase`several pages have a name ${text}: write the page before it, such as ${example}`
          : near
            ? phrase`no cell of this book is named "${text}"; is ${near} meant?`
            : phrase`no cell of this book is named "${text}"`,
      };
    }
  }
  return places;
}
