/** Books as they begin on this machine. */

import type { Decimal } from "../../../functions/decimal.ts";
import { DEFAULT_MARK } from "../../../functions/fractions.ts";
import { phrase } from "../../../functions/phrase.ts";
import { BOOK_UNITS, type Unit } from "../../../functions/units.ts";
import { type Book, blankBook } from "../../book/shape.ts";
import { showDecimal } from "../../engine/show-decimal.ts";

/** The decimal mark of a language such as "de-AT": a point where it is neither of the two, or the language is not known. */
export function decimalOf(language: string | undefined): Decimal {
  try {
    const parts = new Intl.NumberFormat(language).formatToParts(1.5);
    return parts.some(({ type, value }) => type === "decimal" && value === ",") ? "comma" : "point";
  } catch {
    return "point";
  }
}

/**
 * A book that is new here, with the decimal mark of the reader's language: a metric book shows commas
 * where that language does. Inches are shown in fractions. No figure and no answer changes by it.
 */
export const withLocalDecimal = (book: Book, language: string | undefined = navigator.language): Book =>
  BOOK_UNITS[book.unit].tape === "cm" && decimalOf(language) === "comma" ? showDecimal(book, "comma") : book;

/** A blank book in a unit. */
export const newBook = (unit: Unit = "in"): Book =>
  withLocalDecimal(blankBook(phrase`A new book`, unit, DEFAULT_MARK[unit]));
