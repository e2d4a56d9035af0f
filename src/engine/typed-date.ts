/** Days as makers write them, "4.5.2026", "25/12/2026" or "2026/5/4", read by one rule or asked about. */

const WRITTEN = /^(\d{1,2})\s?([./-])\s?(\d{1,2})\s?\2\s?(\d{4})$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})$/;

type Read =
  | { readonly is: "date"; readonly value: string }
  /** It has two readings, or no calendar has the day: a sentence says which. */
  | { readonly is: "unclear"; readonly sentence: string };

/** "2026-05-04"; null for a day that no calendar has, and for years before 1900. */
function isoOf(year: number, month: number, day: number): string | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  return year >= 1900 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day
    ? date.toISOString().slice(0, 10)
    : null;
}

/**
 * The rule: a year that stands first is followed by the month; else the order of day and month must follow
 * from the figures, as in 25.12.2026 or 5/31/2026, or is asked about. Null for what is not written as a date.
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
      ? `${text} is no day of the calendar since 1900; type a day as year, month, day: 2026-05-04`
      : `${text} has two readings: ${days[0]}, with the day first, or ${days[1]}, with the month first; type the one that is meant`;
  return { is: "unclear", sentence };
}
