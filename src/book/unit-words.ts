/** The names of the units in which books measure, in the plural. */
import { phrase } from "../../functions/phrase.ts";
import type { Book } from "./shape.ts";

export const UNIT_WORDS: Readonly<Record<Book["unit"], string>> = {
  in: phrase`inches`,
  cm: phrase`centimetres`,
  mm: phrase`millimetres`,
};
