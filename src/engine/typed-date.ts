/**
 * Days as makers write them: "4.5.2026", "25/12/2026", "2026/5/4", and in a column of dates "4. Mai 2026".
 * Each is read by one rule, or the maker is asked.
 */

import type { Decimal } from "../../functions/decimal.ts";
import { phrase } from "../../functions/phrase.ts";

const WRITTEN = /^(\d{1,2})\s?([./-])\s?(\d{1,2})\s?\2\s?(\d{4})$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})$/;
/** "27. November 2026", "27 de noviembre de 2026", "1er août 2026", "Nov 27, 2026". */
const DAY_MONTH = /^(\d{1,2})(?:\.|er|º|st|nd|rd|th)?\s+(?:de\s+)?(\p{L}{3,})\.?,?\s+(?:de\s+)?(\d{4})$/u;
const MONTH_DAY = /^(\p{L}{3,})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/u;
const SHORT_YEAR = /^\d{1,2}([./-])\d{1,2}\1(\d{2})$/;

type Read =
  | { readonly is: "date"; readonly value: string }
  /** The sentence says that the text has two readings, or that it is not a valid date. */
  | { readonly is: "unclear"; readonly sentence: string };

/** "2026-05-04". Returns null for a date that does not exist, and for years before 1900. */
function isoOf(year: number, month: number, day: number): string | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  return year >= 1900 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day
    ? date.toISOString().slice(0, 10)
    : null;
}

/**
 * Reads a date. When the year is first, the month follows it. Otherwise the numbers must show which of them is
 * the day, as in 25.12.2026 or 5/31/2026. When they do not, the day is first in a book that shows decimal commas,
 * because every language that writes them puts the day before the month (Unicode CLDR); in a book that shows
 * points the maker is asked. Returns null when the text is not written as a date.
 */
export function readDate(text: string, decimal: Decimal): Read | null {
  const first = YEAR_FIRST.exec(text);
  if (first) return dateOf(text, [isoOf(Number(first[1]), Number(first[3]), Number(first[4]))]);
  const found = WRITTEN.exec(text);
  if (!found) return null;
  const [a, b, year] = [Number(found[1]), Number(found[3]), Number(found[4])];
  const dayFirst = isoOf(year, b, a);
  return dateOf(text, decimal === "comma" && dayFirst ? [dayFirst] : [dayFirst, isoOf(year, a, b)]);
}

/**
 * Reads what else a column of dates may hold: a day with the name of its month in English, German, French or
 * Spanish. A year of two figures is asked about. Returns null for any other text.
 */
export function readDateInColumn(text: string): Read | null {
  const short = SHORT_YEAR.exec(text);
  if (short) {
    const whole = `${text.slice(0, -2)}20${short[2]}`;
    return {
      is: "unclear",
      sentence: phrase`the year of ${text} has two figures; type all four, such as ${whole}`,
    };
  }
  const [, day, name, year] = DAY_MONTH.exec(text) ?? swapped(MONTH_DAY.exec(text)) ?? [];
  const month = name === undefined ? undefined : months().get(plain(name));
  return month === undefined ? null : dateOf(text, [isoOf(Number(year), month, Number(day))]);
}

const swapped = (found: RegExpExecArray | null) => found && [found[0], found[2], found[1], found[3]];

/** A name in small letters, without accents. */
const plain = (name: string): string =>
  name.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/\.$/, "");

/** The months by their names, whole and shortened, as Unicode CLDR has them. No name means two months. */
function namesOfMonths(): ReadonlyMap<string, number> {
  const names = ["en", "de", "fr", "es"].flatMap((language) =>
    (["long", "short"] as const).flatMap((month) => {
      const format = new Intl.DateTimeFormat(language, { day: "numeric", month, timeZone: "UTC" });
      return Array.from({ length: 12 }, (_, i) => {
        const part = format.formatToParts(Date.UTC(2026, i, 4)).find(({ type }) => type === "month");
        return [plain(part?.value ?? ""), i + 1] as const;
      });
    }),
  );
  return new Map(names);
}

let known: ReadonlyMap<string, number> | undefined;
const months = () => {
  known ??= namesOfMonths();
  return known;
};

function dateOf(text: string, readings: readonly (string | null)[]): Read {
  const days = [...new Set(readings.filter((day) => day !== null))];
  if (days.length === 1) return { is: "date", value: days[0]! };
  const sentence =
    days.length === 0
      ? phrase`${text} is not a valid date after 1899; type a day as year, month, day: 2026-05-04`
      : phrase`${text} has two readings: ${days[0]!}, with the day first, or ${days[1]!}, with the month first; type the one that is meant`;
  return { is: "unclear", sentence };
}
