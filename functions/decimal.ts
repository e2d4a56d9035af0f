/**
 * Decimal marks. A figure may be typed with a point or with a comma, "28.5" or "28,5", and with
 * separators between thousands, "1,234.5", "1.234,5" or "1 234,5". A figure with two readings is not accepted.
 */

import { phrase } from "./phrase.ts";

/** The sign between the whole figure and its decimals that a book shows. */
export type Decimal = "point" | "comma";

/** Every run of digits, points and commas that begins like a figure. */
const RUN = /(?:\d|[.,](?=\d))[\d.,]*/g;

/** Figures in threes: "1 234", with a plain, narrow or no-break space, and "1'234" where no feet or inches can be meant. */
const IN_THREES =
  /(?<![\d.,/'’]|\d\s)[1-9]\d{0,2}(?:([ \u2009\u00a0\u202f])\d{3}(?:\1\d{3})*|(['’])\d{3}(?:\2\d{3})*(?!\s*[a-z]))(?![\d/'’"″])/gi;

/**
 * A text without the spaces and apostrophes between thousands: "1 234,5" → "1234,5". Plain spaces
 * go only before a decimal mark, or anywhere if `plain` says so: on an inch tape "36 116" may be
 * 36 1/16 without its stroke.
 */
export const withoutGroups = (text: string, plain: boolean): string =>
  !/\d[ \u2009\u00a0\u202f'’]\d/.test(text)
    ? text
    : text.replace(IN_THREES, (run, space: string | undefined, _, at: number) =>
        space === " " && !plain && !/^[.,]\d/.test(text.slice(at + run.length))
          ? run
          : run.replace(/\D/g, ""),
      );

/** The separator between thousands where `decimal` is the decimal mark. */
const thousandsMark = (decimal: Decimal): string => (decimal === "comma" ? "." : ",");

/** Whether a run has two readings: one to three figures, the mark that the book does not use, three figures. */
const hasTwoReadings = (run: string, decimal: Decimal): boolean =>
  (decimal === "comma" ? /^[1-9]\d{0,2}\.\d{3}$/ : /^[1-9]\d{0,2},\d{3}$/).test(run);

/** A run with a point as its decimal mark and without separators between thousands; unchanged when it is not a figure. */
function normalised(run: string): string {
  if (!run.includes(",")) {
    return /^\d{1,3}(?:\.\d{3}){2,}$/.test(run) ? run.replaceAll(".", "") : run;
  }
  if (/^\d*,\d+$/.test(run)) return run.replace(",", ".");
  if (/^\d{1,3}(?:,\d{3})+\.\d+$/.test(run) || /^\d{1,3}(?:,\d{3}){2,}$/.test(run))
    return run.replaceAll(",", "");
  if (/^\d{1,3}(?:\.\d{3})+,\d+$/.test(run)) return run.replaceAll(".", "").replace(",", ".");
  return run;
}

/**
 * A text with a point in every figure: "1,5 m" → "1.5 m", "1.234,5" → "1234.5". A comma and a
 * point are both decimal marks, whichever of them the book shows. Null when a figure in it has two
 * readings: "1,234" in a book that shows points, "1.234" in one that shows commas.
 */
export function withPoints(typed: string, decimal: Decimal): string | null {
  const text = withoutGroups(typed, false);
  if (!/[.,]/.test(text)) return text;
  let unclear = false;
  const plain = text.replace(RUN, (run) => {
    unclear ||= hasTwoReadings(run, decimal);
    return normalised(run);
  });
  return unclear ? null : plain;
}

/** The first figure of a text that has two readings, and the readings as the book would write them. */
export function twoReadings(
  text: string,
  decimal: Decimal,
): { readonly run: string; readonly readings: readonly [string, string] } | null {
  const run = withoutGroups(text, false)
    .match(RUN)
    ?.find((one) => hasTwoReadings(one, decimal));
  if (run === undefined) return null;
  const mark = thousandsMark(decimal);
  return { run, readings: [withDecimalMark(run.replace(mark, "."), decimal), run.replace(mark, "")] };
}

/** Why a text is not read as a figure although it looks like one, in a sentence; null when all is clear. */
export function unclearFigure(text: string, decimal: Decimal): string | null {
  const found = twoReadings(text, decimal);
  if (!found) return null;
  const { run, readings } = found;
  return decimal === "comma"
    ? phrase`${run} has two readings: ${readings[0]} with the point as its decimal mark, or ${readings[1]}; type the one that is meant`
    : phrase`${run} has two readings: ${readings[0]} with the comma as its decimal mark, or ${readings[1]}; type the one that is meant`;
}

/** A text of figures with points, as the book shows it. */
export const withDecimalMark = (text: string, decimal: Decimal = "point"): string =>
  decimal === "comma" ? text.replace(/(\d)\.(?=\d)/g, "$1,") : text;
