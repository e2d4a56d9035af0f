/** What tells headings, figures and numbers that only look like figures apart, in a table of any file format. */
import { isDated } from "./csv-dates.ts";

/** A figure with points, commas or spaces in it. */
export const FIGURE = /^\s*[-+]?\d[\d., \u00a0\u202f']*\s*%?\s*$/;

/** Whether a text is a figure or a date. */
export const isDataText = (text: string): boolean =>
  FIGURE.test(text) || isDated(text) || /^\s*\d{4}-\d{2}-\d{2}\s*$/.test(text);

/** What would not come back from a figure: a number that begins with 0, such as a size or a telephone; more digits than a figure has. */
export const losesAsFigure = (text: string): boolean =>
  /^\s*[-+]?0\d/.test(text) ? FIGURE.test(text) && !isDated(text) : /^\s*\d{16,}\s*$/.test(text);

/**
 * Whether the first line of a table holds its headings: over each column a text of its own that is no figure and no date, and a
 * figure, a date or another value that is no text somewhere below. `first` has null for a cell that is no text.
 */
export function isHeadingLine(
  first: readonly (string | null | undefined)[],
  columns: number,
  isDataBelow: () => boolean,
): boolean {
  const texts = new Set<string>();
  for (let i = 0; i < columns; i += 1) {
    const text = first[i]?.trim().toLowerCase();
    if (!text || isDataText(text) || texts.has(text)) return false;
    texts.add(text);
  }
  return isDataBelow();
}
