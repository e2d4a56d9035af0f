/** Days as separated values have them, "4.5.2026" or "05/04/2026", whose order of day and month a file does not say. */
import { phrase, plural } from "../../functions/phrase.ts";
import { counted } from "./cell-report.ts";

/** Which of the first two numbers of a date is the day; "text" leaves dates as they are. */
export const DATE_ORDERS = {
  "day-month": phrase`day, month, year`,
  "month-day": phrase`month, day, year`,
  text: phrase`leave them as text`,
} as const;

export type DateOrder = keyof typeof DATE_ORDERS;

const DATE = /^\s*(\d{1,2})([./-])(\d{1,2})\2(\d{4})\s*$/;

/** Whether a cell may be such a date. */
export const isDated = (cell: string): boolean => DATE.test(cell);

export interface Dates {
  /** Null in a file without such dates. */
  readonly order: DateOrder | null;
  readonly said: readonly string[];
}

/** The order that the dates of a file have: given, or shown by a number above 12; else they stay texts. */
export function datesOf(rows: readonly (readonly string[])[], given?: DateOrder): Dates {
  let [count, dayFirst, monthFirst, example] = [0, 0, 0, ""];
  for (const row of rows)
    for (const cell of row) {
      const found = DATE.exec(cell);
      if (!found) continue;
      count += 1;
      const [first, second] = [Number(found[1]), Number(found[3])];
      if (first > 12) dayFirst += 1;
      if (second > 12) monthFirst += 1;
      if (first <= 12 && second <= 12) example ||= cell.trim();
    }
  if (count === 0) return { order: null, said: [] };
  const number = counted(count);
  if (given)
    return {
      order: given,
      said: [
        given === "text"
          ? phrase`${number} ${plural(count, "date is", "dates are")} left as text, as you say.`
          : phrase`${number} ${plural(count, "date is", "dates are")} read as ${DATE_ORDERS[given]}, as you say.`,
      ],
    };
  if (dayFirst > 0 && monthFirst === 0)
    return {
      order: "day-month",
      said: [
        phrase`${number} ${plural(count, "date is", "dates are")} read as day, month, year: some first numbers are above 12.`,
      ],
    };
  if (monthFirst > 0 && dayFirst === 0)
    return {
      order: "month-day",
      said: [
        phrase`${number} ${plural(count, "date is", "dates are")} read as month, day, year: some second numbers are above 12.`,
      ],
    };
  return {
    order: "text",
    said: [
      example
        ? phrase`${number} ${plural(count, "date", "dates")} such as ${example} can be read in two ways: say in which order day and month stand, or they stay texts.`
        : phrase`${number} ${plural(count, "date", "dates")} have no order in common: say in which order day and month stand, or they stay texts.`,
    ],
  };
}

/** A date of this order as a book writes it, "2026-05-04"; other cells, and days that no calendar has, as they are. */
export function isoDate(cell: string, order: DateOrder | null): string {
  const found = order === null || order === "text" ? null : DATE.exec(cell);
  if (!found) return cell;
  const [first, second, year] = [Number(found[1]), Number(found[3]), Number(found[4])];
  const [day, month] = order === "day-month" ? [first, second] : [second, first];
  const date = new Date(Date.UTC(year, month - 1, day));
  return year >= 1900 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day
    ? date.toISOString().slice(0, 10)
    : cell;
}
