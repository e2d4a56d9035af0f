/** What the page shows of how the open book is kept. */
import type { Place } from "../../book/address.ts";

export interface Keeping {
  readonly id: string;
  /** Goes up by one when another book is opened. */
  readonly opening: number;
  /** The cell that was chosen when the book was last open. */
  readonly place: Place;
  /** Whether everything that was done is on the shelf; "unsaved" when it can't be put there. */
  readonly state: "saved" | "saving" | "unsaved";
  /** True while another tab has the book open too. */
  readonly elsewhere: boolean;
  /** When the last copy was saved to a file, in milliseconds since 1970, and whether the book has changed since. */
  readonly copied: { readonly at: number; readonly changed: boolean } | null;
  /** Why nothing can be kept in this browser, in a sentence. */
  readonly trouble: string | null;
  /** Something that happened to the book without being asked for. */
  readonly news: string | null;
}
