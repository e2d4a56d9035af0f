/** What the measurements share: percentiles, a table, a page with a book in it, and one that listens to its own keys. */
import type { Page } from "playwright-core";
import type { Book } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";

/** Milliseconds from a key to what came of it. */
export interface Heard {
  /** The first frame painted after it. */
  readonly painted: number;
  /** The page's last change. */
  readonly settled: number;
}

/** Listens for keys: when the next frame is painted, and when the page has changed for the last time. */
function ear(names: readonly string[]): void {
  const heard: { painted: number; settled: number }[] = [];
  Object.assign(globalThis, { heard });
  addEventListener(
    "keydown",
    ({ key, timeStamp }) => {
      if (!names.includes(key)) return;
      const one = { painted: 0, settled: 0 };
      heard.push(one);
      const watch = new MutationObserver(() => {
        one.settled = performance.now() - timeStamp;
      });
      watch.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
      setTimeout(() => watch.disconnect(), 400);
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          one.painted = performance.now() - timeStamp;
        };
        port2.postMessage(null);
      });
    },
    true,
  );
}

/** What comes of each press of some keys while `act` presses them. */
export async function heardWhile(
  page: Page,
  keys: readonly string[],
  act: () => Promise<void>,
): Promise<Heard[]> {
  await page.evaluate(ear, keys);
  await act();
  return page.evaluate(() => (globalThis as unknown as { heard: Heard[] }).heard);
}

/** Opens a book as a file dropped on the page. */
export async function openBook(page: Page, book: Book): Promise<void> {
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], "book.json", { type: "application/json" }));
    dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
  }, writeBook(book));
  await page.waitForFunction(
    (title) => document.querySelector<HTMLInputElement>('[aria-label="Title of the book"]')?.value === title,
    book.title,
    { timeout: 120_000 },
  );
}

const at = (sorted: readonly number[], share: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;

/** "12.3 / 18.1": the median and the 95th percentile. */
export function told(times: readonly number[]): string {
  const sorted = times.toSorted((a, b) => a - b);
  return `${at(sorted, 0.5).toFixed(1)} / ${at(sorted, 0.95).toFixed(1)}`;
}

export function print(title: string, rows: readonly (readonly string[])[]): void {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  const line = (row: readonly string[]) =>
    row.map((text, i) => (i === 0 ? text.padEnd(widths[i]!) : text.padStart(widths[i]!))).join("   ");
  console.log([title, ...rows.map(line)].join("\n"));
}
