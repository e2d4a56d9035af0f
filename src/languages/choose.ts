/** Which of the languages a reader gets. */

/** The language in which the program is written, which needs no catalogue. */
export const ENGLISH = "en";

/**
 * The tag of the language to use, of those there are beside English: the one that the reader has set, else the
 * first that the browser asks for, each looked up with less and less of its tag (RFC 4647, section 3.4): a
 * reader of "de-CH" gets "de". English where nothing fits.
 */
export function chosenLanguage(
  there: readonly string[],
  asked: readonly string[],
  set: string | null,
): string {
  const all = [ENGLISH, ...there];
  for (const wanted of set === null ? asked : [set, ...asked]) {
    const parts = wanted.split("-");
    while (parts.length > 0) {
      const tag = parts.join("-").toLowerCase();
      const found = all.find((one) => one.toLowerCase() === tag);
      if (found) return found;
      parts.pop();
      // A single letter begins a part that means nothing by itself.
      if (parts.at(-1)?.length === 1) parts.pop();
    }
  }
  return ENGLISH;
}
