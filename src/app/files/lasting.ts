/** Whether the browser may delete what is kept in it when space runs short. */

let asked = false;

/** Asks the browser, once, not to delete the books by itself. Some browsers ask the person. */
export function askToKeepBooks(): void {
  if (asked) return;
  asked = true;
  navigator.storage?.persist?.().catch(() => {});
}

/** True when the browser has promised to keep the books; null when it does not say. */
export async function promisesToKeepBooks(): Promise<boolean | null> {
  try {
    return (await navigator.storage?.persisted?.()) ?? null;
  } catch {
    return null;
  }
}
