/** What reads the clipboard's texts: it is loaded right after the page's start, and a paste before that waits for it. */
type Reader = typeof import("./understood.ts");

let there: Reader | null = null;

/** The reader; null until it is there. */
export const clipboardReader = (): Reader | null => there;

/** Loads the reader; fails where it can't be loaded, and can be called again then. */
export async function loadClipboardReader(): Promise<Reader> {
  there ??= await import("./understood.ts");
  return there;
}
