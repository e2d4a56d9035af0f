/** Whether better lays are looked for without being asked for: the maker's choice, kept in this browser. */
const KEY = "ellwand.search-by-itself";

const listeners = new Set<() => void>();
/** For a browser that keeps nothing: the choice of this visit. */
let chosen: boolean | null = null;

export function searchesByItself(): boolean {
  try {
    return chosen ?? localStorage.getItem(KEY) !== "off";
  } catch {
    return true;
  }
}

export function setSearchesByItself(on: boolean): void {
  chosen = on;
  try {
    localStorage.setItem(KEY, on ? "on" : "off");
  } catch {
    // It holds until the page is closed.
  }
  for (const listener of [...listeners]) listener();
}

export function onSearchesByItself(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
