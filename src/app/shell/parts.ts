/** The parts of the page that F6 goes through, in their order on the screen. */

const PARTS = [".top", ".pages", ".middle", ".side", ".foot"] as const;

/** Goes `by` parts on: to what is chosen there, else to the first thing. `toGrid` takes the focus into the grid. */
export function goToPart(by: number, toGrid: () => void): void {
  const now = PARTS.findIndex((part) => document.activeElement?.closest(part));
  const next = PARTS[(now < 0 ? 2 : now + by + PARTS.length) % PARTS.length]!;
  if (next === ".middle") toGrid();
  else {
    const part = document.querySelector(next);
    const find = (what: string) => part?.querySelector<HTMLElement>(what);
    (find("[aria-current], [aria-selected='true']") ?? find("button:not(:disabled), input, select"))?.focus();
  }
}
