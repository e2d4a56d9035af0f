/** Texts that are clearly meant as a number or a day and can't be read as one: "3 1/0", "16 1/2x", "31 mai 2026x". */
import { phrase } from "../../functions/phrase.ts";
import type { ColumnKind } from "../book/shape.ts";

/** In a column of numbers a short text that begins like a number, in the digits of any script; not "2nd fitting". */
const BEGINS_LIKE_ONE = /^[~≈<>±(]?\s*[-+−]?[.,]?\p{Nd}(?!\d*(?:st|nd|rd|th|er)\b)/iu;
/** A note may begin with a number; such a text is longer. */
const LONGEST = 24;

/** In any other column a whole number and a fraction, with no more than a few signs around them. */
const MIXED = /^[^\d]{0,3}\d+(?:\s*[½¼¾⅛⅜⅝⅞⅓⅔]|[\s-]+\d+\s*\/\s*\d+)[^\d]{0,3}$/;

/** Why a text that stands in a column of this kind is no number, in a sentence; null where it need not be one. */
export function numberNotRead(text: string, kind: ColumnKind): string | null {
  if (kind === "text") return null;
  const isMeant = kind === "any" ? MIXED.test(text) : text.length <= LONGEST && BEGINS_LIKE_ONE.test(text);
  if (!isMeant) return null;
  if (kind === "date")
    return phrase`"${text}" can't be read as a day and is kept as a text: type it as year, month, day: 2026-05-04`;
  if (/\/\s*0+(?!\d)/.test(text))
    return phrase`"${text}" has 0 under the stroke of its fraction and is kept as a text: type the number that is meant`;
  return kind === "length"
    ? phrase`"${text}" can't be read as a length and is kept as a text: type it as 16 1/2, or with its unit as 42 cm`
    : phrase`"${text}" can't be read as a number and is kept as a text: type it as 16 1/2 or 2.5`;
}
