/** The finest mark of a tape, given by a maker as a text or a number: "1/16", "5 mm", 0.125. */
import type { Decimal } from "./decimal.ts";
import { markSize, readTape, roundTo, type TapeMark, tapeText } from "./fractions.ts";
import { phrase } from "./phrase.ts";
import { Refusal } from "./refusal.ts";
import { BOOK_UNITS, type Unit } from "./units.ts";

/** The size of the mark in the book's unit; the book's own finest mark when it is null or empty. */
export function sizeOfMark(
  size: string | null,
  unit: Unit,
  defaultMark: TapeMark,
  decimal?: Decimal,
): number {
  if (size === null || size === "") return markSize(defaultMark, unit);
  const read = size.length > 20 ? null : readTape(size, unit, decimal);
  if (!read || !(read.length > 0)) {
    throw new Refusal(phrase`mark must be a length above 0 such as 1/8 or 5 mm, not "${size.slice(0, 20)}"`);
  }
  return read.length;
}

/** The length at its nearest mark, without the unit's name: a fraction where the mark is a part of an inch. */
export function inMarks(length: number, unit: Unit, size: number): string {
  const parts = Math.round(1 / size);
  if (BOOK_UNITS[unit].tape === "in" && parts >= 1 && parts <= 64 && Math.abs(1 / size - parts) < 1e-9) {
    return tapeText(length, unit, `1/${parts}` as TapeMark);
  }
  const rounded = Number(roundTo(Math.abs(length), size).toFixed(3));
  return length < 0 && rounded > 0 ? `-${rounded}` : String(rounded);
}
