/**
 * The limits of an argument. A declaration states them in centimetres; each unit of the tape shows
 * the round figure nearest to them, and what is refused lies beyond the round figures of both, so
 * that a book answers the same in either unit and no refusal contradicts itself.
 */

import type { Kind, Take } from "./define.ts";
import { roundTo, tapeText } from "./fractions.ts";
import { numberText } from "./number-text.ts";
import { BOOK_UNITS, convert, type Unit } from "./units.ts";

/** The size of one centimetre in the unit, or of one square centimetre in its square. */
export function scaleOf(kind: Kind, unit: Unit): number {
  if (kind === "length") return convert(1, "cm", unit);
  return kind === "area" ? convert(1, "cm", unit) ** 2 : 1;
}

/** Round figures from a hundred on are these times a hundred, a thousand, and so on. */
const ROUND = [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

function roundAbove(figure: number): number {
  const ten = 10 ** Math.floor(Math.log10(figure) + 1e-12);
  const nearest = ROUND.toSorted((a, b) => Math.abs(a - figure / ten) - Math.abs(b - figure / ten))[0]!;
  return nearest * ten;
}

/** A limit in the unit's own round figures: a limit of 1 cm is 3/8 in. */
export function roundLimit(limit: number, kind: Kind, unit: Unit): number {
  const figure = Math.abs(limit * scaleOf(kind, unit));
  if (BOOK_UNITS[unit].tape === "cm" || figure === 0 || (kind !== "length" && kind !== "area"))
    return limit * scaleOf(kind, unit);
  const round =
    figure >= 100 || kind === "area"
      ? roundAbove(figure)
      : figure >= 20
        ? roundTo(figure, 5)
        : figure >= 5
          ? roundTo(figure, 1)
          : figure >= 1
            ? roundTo(figure, 0.5)
            : figure >= 1 / 8
              ? roundTo(figure, 1 / 8)
              : Math.max(1 / 32, 2 ** Math.round(Math.log2(figure)));
  return Math.sign(limit) * round;
}

/** The least and greatest accepted value, in the unit: the wider of the limits that the units show. */
export function limitsOf({ kind, from, to }: Pick<Take, "kind" | "from" | "to">, unit: Unit) {
  const inInches = (limit: number) =>
    (roundLimit(limit, kind, "in") / scaleOf(kind, "in")) * scaleOf(kind, unit);
  const inCentimetres = (limit: number) => limit * scaleOf(kind, unit);
  const wider = (limit: number | undefined, choose: (...figures: number[]) => number) =>
    limit === undefined ? undefined : choose(inInches(limit), inCentimetres(limit));
  return { least: wider(from, Math.min), most: wider(to, Math.max) };
}

/** A limit as text without its unit: "3/8", "20000". */
export function limitText(limit: number, kind: Kind, unit: Unit): string {
  const round = roundLimit(limit, kind, unit);
  if (kind === "length" && BOOK_UNITS[unit].tape === "in") return tapeText(round, unit, "1/32");
  return numberText(round, 4);
}
