/** Whether a book is open in another tab: the tab that has it holds a lock, which ends with the tab. */

/**
 * Holds a book for this tab. `onFree` is called with false at once when another tab has it, and with
 * true when this tab has come to hold it. Returns what lets go. Without locks in the browser every
 * tab counts as alone; the shelf's revisions still keep one from writing over the other.
 */
export function holdBook(id: string, onFree: (free: boolean) => void): () => void {
  if (!("locks" in navigator)) {
    onFree(true);
    return () => {};
  }
  const name = `ellwand.book.${id}`;
  const gone = new AbortController();
  const held = () =>
    new Promise<void>((resolve) => {
      if (gone.signal.aborted) return resolve();
      onFree(true);
      gone.signal.addEventListener("abort", () => resolve(), { once: true });
    });
  const hold = async () => {
    const taken = await navigator.locks.request(name, { ifAvailable: true }, (lock) =>
      lock ? held().then(() => true) : false,
    );
    if (taken || gone.signal.aborted) return;
    onFree(false);
    await navigator.locks.request(name, { signal: gone.signal }, held);
  };
  hold().catch(() => {});
  return () => gone.abort();
}
