/** Days as makers write them, "4.5.2026", "25/12/2026" or "2026/5/4", read by one rule or asked about. */

const WRITTEN = /^(\d{1,2})\s?([./-])\s?(\d{1,2})\s?\2\s?(\d{4})$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})$/;

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
 * the day, as in 25.12.2026 or 5/31/2026; when they do not, the maker is asked. Returns null when the text is
 * not written as a date.
 */
export function readDate(text: string): Read | null {
  const first = YEAR_FIRST.exec(text);
  if (first) return dateOf(text, [isoOf(Number(first[1]), Number(first[3]), Number(first[4]))]);
  const found = WRITTEN.exec(text);
  if (!found) return null;
  const [a, b, year] = [Number(found[1]), Number(found[3]), Number(found[4])];
  return dateOf(text, [isoOf(year, b, a), isoOf(year, a, b)]);
}

function dateOf(text: string, readings: readonly (string | null)[]): Read {
  const days = [...new Set(readings.filter((day) => day !== null))];
  if (days.length === 1) return { is: "date", value: days[0]! };
  const sentence =
    days.length === 0
      ? `${text} is not a valid date after 1899; type a day as year, month, day: 2026-05-04`
      : `${text} has two readings: ${days[0]}, with the day first, or ${days[1]}, with the month first; type the one that is meant`;
  return { is: "unclear", sentence };
}
