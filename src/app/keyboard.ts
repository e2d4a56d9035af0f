/** Where the keyboard goes when an act takes away the button it came from: without this the browser gives it to the page. */

/** Whether nothing on the page has the keyboard. */
export const isKeyboardFree = (): boolean =>
  document.activeElement === null || document.activeElement === document.body;

/** What can take the keyboard. */
const TAKES = ":is(button, input, select, textarea, summary, a[href], [tabindex='0']):not(.handsontable *)";

/** In milliseconds: an act that waits for the disk may take its button away only then. */
const LONGEST = 5000;
const PAUSE = 16;

function take(element: Element | undefined): boolean {
  if (!element?.isConnected) return false;
  for (const one of element.matches(TAKES) ? [element] : element.querySelectorAll(TAKES)) {
    (one as HTMLElement).focus();
    if (document.activeElement === one) return true;
  }
  return false;
}

/**
 * To be called in an act whose button may go away. When it has gone, and nothing else has taken the
 * keyboard meanwhile, the keyboard goes to what stands in its place: in its row, else in the next row,
 * else in the one before, and so on outwards, but not out of `within`; and where there is nothing, to
 * whatever `otherwise` gives it to.
 */
export function handOn(within: string, otherwise?: () => void): void {
  const from = document.activeElement;
  if (from === null || isKeyboardFree()) return;
  const frame = from.closest(within);
  const path: { readonly parent: Element; readonly index: number }[] = [];
  for (let one = from; one !== frame && one.parentElement; one = one.parentElement)
    path.push({ parent: one.parentElement, index: [...one.parentElement.children].indexOf(one) });
  const toNearest = () => {
    for (const { parent, index } of frame ? path : []) {
      if (!parent.isConnected) continue;
      const children = [...parent.children];
      if ([...children.slice(index), ...children.slice(0, index).reverse()].some(take)) return;
    }
    otherwise?.();
  };
  const until = performance.now() + LONGEST;
  const look = () => {
    if (isKeyboardFree()) toNearest();
    else if (document.activeElement === from && performance.now() < until) setTimeout(look, PAUSE);
  };
  setTimeout(look);
}
