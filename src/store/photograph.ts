/** Puts a small photograph in a cell, or takes it away. */
import { phrase } from "../../functions/phrase.ts";
import { type Block, cellAddress, type Place } from "../book/address.ts";
import { withSettings } from "../book/cell-marks.ts";
import {
  LONGEST_PHOTOGRAPH,
  LONGEST_PHOTOGRAPH_WORDS,
  PHOTOGRAPH,
  photographsFault,
} from "../book/photographs.ts";
import type { Book } from "../book/shape.ts";
import type { Command } from "./store.ts";

/** `words` say what the photograph shows, for those who can't see it. */
export interface Photograph {
  readonly image: string;
  readonly words: string;
}

/** A command that puts copied cells down, with their photographs: repeated as the cells are. */
export const withPhotographs = (command: Command, from: Book, copied: Block, target: Block): Command => {
  const cells = from.pages[copied.page]?.cells ?? {};
  if (!Object.values(cells).some(({ photograph }) => photograph)) return command;
  const [tall, wide] = [copied.bottom - copied.top + 1, copied.right - copied.left + 1];
  return {
    ...command,
    edit: (book) => {
      let next = command.edit(book);
      for (let row = target.top; row <= target.bottom; row += 1)
        for (let column = target.left; column <= target.right; column += 1) {
          if ("refusal" in next) return next;
          const [r, c] = [
            copied.top + ((row - target.top) % tall),
            copied.left + ((column - target.left) % wide),
          ];
          const { photograph, photographWords = "" } = cells[cellAddress(r, c)] ?? {};
          if (photograph)
            next = putPhotograph(
              { page: target.page, row, column },
              { image: photograph, words: photographWords },
            ).edit(next);
        }
      return next;
    },
  };
};

export const putPhotograph = (place: Place, photograph: Photograph | null): Command => ({
  label: photograph ? phrase`put a photograph in a cell` : phrase`take a photograph away`,
  edit: (book) => {
    const page = book.pages[place.page]!;
    const address = cellAddress(place.row, place.column);
    const { photograph: old = "", photographWords = "" } = page.cells?.[address] ?? {};
    const { image = "", words = "" } = photograph ?? {};
    if (image !== "" && (image.length > LONGEST_PHOTOGRAPH || !PHOTOGRAPH.test(image)))
      return {
        refusal: phrase`the photograph is not a small JPEG, PNG or WebP picture: choose its file again`,
      };
    if (words.length > LONGEST_PHOTOGRAPH_WORDS)
      return {
        refusal: phrase`the words for a photograph have at most ${LONGEST_PHOTOGRAPH_WORDS} characters, not ${words.length}`,
      };
    if (old === image && photographWords === words) return book;
    const changed = withSettings(page, address, {
      photograph: image || undefined,
      photographWords: (image && words) || undefined,
    });
    const next = { ...book, pages: book.pages.with(place.page, changed) };
    const fault = photographsFault(book, next);
    return fault ? { refusal: fault } : next;
  },
});
