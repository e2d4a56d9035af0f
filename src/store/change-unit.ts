/** The command that measures a book in another unit; the page loads it when it is chosen. */
import { phrase } from "../../functions/phrase.ts";
import type { Unit } from "../../functions/units.ts";
import { UNIT_WORDS } from "../book/unit-words.ts";
import { convertBook } from "../engine/convert.ts";
import type { Command } from "./store.ts";

/** Typed lengths are converted, so that no answer moves. */
export const changeUnit = (unit: Unit): Command => ({
  label: phrase`measure in ${UNIT_WORDS[unit]}`,
  edit: (book) => convertBook(book, unit),
});
