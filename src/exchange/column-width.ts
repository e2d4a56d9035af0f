/** How wide a column begins that came from a file, in pixels on the screen. */

/** A letter of a cell, of a heading in its bold type, and the blank around either. */
const [LETTER, HEADING_LETTER, AROUND] = [8, 10, 24];
const [LEAST, MOST] = [60, 320];

/** Wide enough for the heading and for most of the texts, of which the first 200 count. */
export function columnWidth(heading: string, texts: readonly string[]): number {
  const longest = texts.slice(0, 200).reduce((most, text) => Math.max(most, text.length), 0);
  return Math.min(MOST, Math.max(LEAST, AROUND + HEADING_LETTER * heading.length, AROUND + LETTER * longest));
}
