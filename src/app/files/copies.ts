/** How the page says when a book was last saved to a file. */
import type { Keeping } from "./keeping.ts";
import { whenText } from "./when.ts";

type Copied = Pick<Keeping, "copied">;

/** "saved to peplum.json (4 May 2026, 10:12); the book has changed since". */
export function copyText({ copied }: Copied): string {
  if (!copied) return "no copy has been saved to a file";
  const what = copied.file ? `saved to ${copied.file}` : "a copy was saved to a file";
  return `${what} (${whenText(copied.at)})${copied.changed ? "; the book has changed since" : ""}`;
}

/** A file's name, its middle left out where it is long. */
const short = (file: string): string => (file.length > 24 ? `${file.slice(0, 11)}…${file.slice(-12)}` : file);

/** The same in few words: "saved to peplum.json 10:38, changed since". */
export function lastCopy({ copied }: Copied): string {
  if (!copied) return "no copy in a file";
  const what = copied.file ? `saved to ${short(copied.file)}` : "copy in a file";
  return `${what} ${whenText(copied.at)}${copied.changed ? ", changed since" : ""}`;
}
