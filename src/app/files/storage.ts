/**
 * The browser's two small stores of texts. Either may be missing, forbidden or full: then reading
 * gives nothing and writing says false, and nothing is thrown.
 */
type Area = "localStorage" | "sessionStorage";

export function recall(area: Area, key: string): string | null {
  try {
    return window[area].getItem(key);
  } catch {
    return null;
  }
}

export function remember(area: Area, key: string, text: string): boolean {
  try {
    window[area].setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

export function forget(area: Area, key: string): void {
  try {
    window[area].removeItem(key);
  } catch {
    // Where nothing can be written there is nothing to remove.
  }
}

/** The keys that begin with `start`. */
export function keysOf(area: Area, start: string): string[] {
  try {
    return Object.keys(window[area]).filter((key) => key.startsWith(start));
  } catch {
    return [];
  }
}
