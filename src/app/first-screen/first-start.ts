/** Whether this is the first start in this browser: only then the ready book is shown before the program is there. */

/**
 * Shows the first screen, unless a book was ever open here, the address asks for something else, or the
 * reader's language may be another one. The build writes it into index.html as it is, so that it runs
 * before the first paint: it must not use anything outside itself.
 */
export function showFirstScreen(): void {
  const root = document.documentElement;
  const isOfBooks = (key: string) => /^ellwand\.(?:started|place|journal|language)/.test(key);
  try {
    const isOther = root.dataset.languages && !/^en\b/.test(navigator.language);
    if (!location.hash && !isOther && !Object.keys(localStorage).some(isOfBooks)) root.dataset.first = "";
  } catch {
    // Where the store can't be read, nobody knows.
  }
}
