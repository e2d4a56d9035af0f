/**
 * The keyboard is never lost. A browser gives the focus to the page when the thing that has it goes away
 * or is disabled: here it goes to what is nearest within the same part, else to the grid.
 */
const FOCUSABLE =
  'button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary, a[href], [tabindex="0"]';

/** Focus does not climb out of these. */
const ROOM = "dialog, .messages, .pages, .side, .foot, .top, .middle";

/** Watches what goes away; returns what ends it. `toGrid` gives the grid the focus. */
export function keepFocus(toGrid: () => void): () => void {
  let last: HTMLElement | null = null;
  let around: HTMLElement[] = [];
  let [x, y] = [0, 0];
  const onFocus = ({ target }: FocusEvent) => {
    if (!(target instanceof HTMLElement) || target === document.body) return;
    // The grid keeps the keyboard itself, also when the cell that has it is scrolled out of sight.
    if (target.closest(".grid-host")) {
      last = null;
      return;
    }
    last = target;
    around = [];
    for (let one = target.parentElement; one; one = one.matches(ROOM) ? null : one.parentElement)
      around.push(one);
    const box = target.getBoundingClientRect();
    [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
  };
  const far = (one: HTMLElement): number => {
    const box = one.getBoundingClientRect();
    return Math.hypot(box.left + box.width / 2 - x, box.top + box.height / 2 - y);
  };
  const mend = () => {
    const now = document.activeElement;
    if (!last || (now !== null && now !== document.body && now !== last)) return;
    if (last.isConnected && !last.matches(":disabled")) return;
    last = null;
    for (const one of around) {
      if (!one.isConnected) continue;
      const found = [...one.querySelectorAll<HTMLElement>(FOCUSABLE)].filter(
        (other) => other.checkVisibility() && other.closest("[inert]") === null,
      );
      if (found.length === 0) continue;
      found.reduce((best, other) => (far(other) < far(best) ? other : best)).focus();
      return;
    }
    toGrid();
  };
  const watcher = new MutationObserver(() => {
    // What takes the focus by itself, such as a dialog that closes, does so before this.
    if (last && (!last.isConnected || last.matches(":disabled"))) setTimeout(mend);
  });
  document.addEventListener("focusin", onFocus, true);
  watcher.observe(document.body, {
    attributeFilter: ["disabled"],
    attributes: true,
    childList: true,
    subtree: true,
  });
  return () => {
    watcher.disconnect();
    document.removeEventListener("focusin", onFocus, true);
  };
}
