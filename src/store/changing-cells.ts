/** What a person can do to many cells at once: sort them, set how they are shown, put one text in the place of another. */
import { phrase, plural } from "../../functions/phrase.ts";
import { type Block, cellAddress, columnLetters, fullAddress, type Place } from "../book/address.ts";
import { type SettingsChange, withSettings } from "../book/cell-marks.ts";
import * as edit from "../book/edit.ts";
import { replacedIn, type Wanted } from "../book/find.ts";
import { readFitting } from "../book/fitting.ts";
import { LONGEST, typedAt } from "../book/shape.ts";
import { type SortValue, sortedRows, sortOrder } from "../book/sort.ts";
import { choicesFault } from "../engine/choices.ts";
import type { Command } from "./store.ts";

/** Sorts the rows of a block by one of its columns; `value` gives what the cells hold. */
export const sortBlock = (
  block: Block,
  column: number,
  descending: boolean,
  value: (place: Place) => SortValue,
): Command => ({
  label: phrase`sort ${plural(block.bottom - block.top + 1, "a row", "# rows")} by column ${columnLetters(column)}`,
  edit: (book) => {
    const values = Array.from({ length: block.bottom - block.top + 1 }, (_, i) =>
      value({ page: block.page, row: block.top + i, column }),
    );
    return sortedRows(book, block, sortOrder(values, descending));
  },
});

/** Sets how the cells of a block are shown and what they are chosen from; undefined takes a setting away. */
export const setCells = (block: Block, change: SettingsChange): Command => {
  const count = (block.bottom - block.top + 1) * (block.right - block.left + 1);
  return {
    label: phrase`set ${plural(count, "a cell", "# cells")}`,
    edit: (book) => {
      if (count > MOST_SET)
        return {
          refusal: phrase`at most ${MOST_SET} cells are set at once, not ${count}; choose fewer, or set the whole column`,
        };
      if ((change.choices ?? "").length > LONGEST.choices)
        return {
          refusal: phrase`a list of choices has at most ${LONGEST.choices} characters; put it into cells`,
        };
      const fault = change.choices === undefined ? null : choicesFault(book, block.page, change.choices);
      const fitting = change.fitting === undefined ? null : readFitting(change.fitting);
      if (fault) return { refusal: fault };
      if (fitting && "fault" in fitting) return { refusal: fitting.fault };
      if ((change.fitting ?? "").length > LONGEST.fitting)
        return { refusal: phrase`the name of a seam has at most ${LONGEST.fitting} characters` };
      let page = book.pages[block.page]!;
      for (let row = block.top; row <= block.bottom; row += 1)
        for (let column = block.left; column <= block.right; column += 1)
          page = withSettings(page, cellAddress(row, column), change);
      return JSON.stringify(page.cells) === JSON.stringify(book.pages[block.page]!.cells)
        ? book
        : { ...book, pages: book.pages.with(block.page, page) };
    },
  };
};

/** Settings stand in the file cell by cell. */
const MOST_SET = 500;

/** Puts a text in the place of another in these cells, as one step. `fault` says why a text can't stand in a cell. */
export const replaceTexts = (
  places: readonly Place[],
  wanted: Wanted,
  by: string,
  fault: (typed: string, page: number) => string | null,
): Command => ({
  label: phrase`replace “${wanted.text.slice(0, 20)}” in ${plural(places.length, "a cell", "# cells")}`,
  edit: (book) => {
    const typings: edit.Typing[] = [];
    for (const place of places) {
      const before = typedAt(book, place.page, place.row, place.column);
      const typed = replacedIn(before, wanted, by);
      if (typed === before) continue;
      const reason = fault(typed, place.page);
      if (reason)
        return {
          refusal: phrase`nothing was replaced: ${fullAddress(book, place)} would be ${typed.slice(0, 60)}, which can't be read (${reason})`,
        };
      typings.push({ ...place, typed });
    }
    const refusal = edit.typingFault(typings);
    return refusal ? { refusal: phrase`nothing was replaced: ${refusal}` } : edit.type(book, typings);
  },
});
