/** How the page says when a book was last copied to a file. */
import type { Keeping } from "./keeping.ts";

type Copied = Pick<Keeping, "copied">;

/** "a copy was saved to a file on 4 May 2026, 10:12; the book has changed since". */
export function copyText({ copied }: Copied): string {
  if (!copied) return "no copy has been saved to a file";
  const when = new Date(copied.at).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
  return `a copy was saved to a file on ${when}${copied.changed ? "; the book has changed since" : ""}`;
}

/** The same in few words: "copy in a file: 4 May 2026". */
export function lastCopy({ copied }: Copied): string {
  if (!copied) return "no copy in a file";
  return `copy in a file: ${copied.changed ? "" : "up to date, "}${new Date(copied.at).toLocaleDateString(undefined, { dateStyle: "medium" })}`;
}
