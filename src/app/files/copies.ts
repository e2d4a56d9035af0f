/** How the page says when a book was last saved to a file. */
import { phrase } from "../../../functions/phrase.ts";
import type { Keeping } from "./keeping.ts";
import { whenText } from "./when.ts";

type Copied = Pick<Keeping, "copied">;

/** "saved to peplum.json (4 May 2026, 10:12); the book has changed since". */
export function copyText({ copied }: Copied): string {
  if (!copied) return phrase`no copy has been saved to a file`;
  const when = whenText(copied.at);
  const what = copied.file
    ? phrase`saved to ${copied.file} (${when})`
    : phrase`a copy was saved to a file (${when})`;
  return copied.changed ? phrase`${what}; the book has changed since` : what;
}

/** A file's name, its middle left out where it is long. */
const short = (file: string): string => (file.length > 24 ? `${file.slice(0, 11)}…${file.slice(-12)}` : file);

/** The same in few words: "saved to peplum.json 10:38, changed since". */
export function lastCopy({ copied }: Copied): string {
  if (!copied) return phrase`no copy in a file`;
  const when = whenText(copied.at);
  const what = copied.file ? phrase`saved to ${short(copied.file)} ${when}` : phrase`copy in a file ${when}`;
  return copied.changed ? phrase`${what}, changed since` : what;
}
