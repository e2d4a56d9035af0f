/**
 * From the keystroke to the paint in Chromium, and the engine's part of it in Node, for the ready
 * book and for a book of 1,000 formulas that all rest on one cell. PRESSES=100 sets how often.
 * npx vitest run --config tests/speed/vitest.config.ts tests/speed/page.speed.ts
 */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, it } from "vitest";
import { findPlace } from "../../src/book/address.ts";
import { readBook } from "../../src/book/read.ts";
import { type Book, blankBook } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { typeCells } from "../../src/store/commands.ts";
import { Store } from "../../src/store/store.ts";
import { cell, type Visit, visit } from "../browser/page.ts";

const PRESSES = Number(process.env.PRESSES ?? 60);

/** What is measured: a book, a typed cell of it on its page, and what is typed the n-th time. */
interface Question {
  readonly title: string;
  readonly book: Book;
  readonly page: string;
  readonly address: string;
  readonly typed: (turn: number) => string;
}

function ready(): Book {
  const reading = readBook(
    readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url), "utf8"),
  );
  if (!("book" in reading)) throw new Error(reading.reason);
  return reading.book;
}

/** 250 rows of four formulas: plain arithmetic, two sewing functions, and a chain down all rows. */
function thousand(): Book {
  const book = blankBook("A thousand formulas", "in", "1/8");
  const rows = Array.from({ length: 250 }, (_, i) => {
    const row = i + 1;
    return [
      i === 0 ? "27" : "",
      `=$A$1+${row}/8`,
      `=SPREAD_PER_GAP(B${row};B${row}*2;5)`,
      i === 0 ? "=B1" : `=D${row - 1}+C${row}/1000`,
      `=FLARE_ANGLE(B${row};B${row}*1.5;9)`,
    ];
  });
  const columns = ["Waist", "With ease", "Spread", "Sum", "Angle"].map((heading) => ({
    heading,
    kind: "any" as const,
    width: 110,
  }));
  return {
    ...book,
    pages: book.pages.map((page) => (page.stage === "Draft" ? { ...page, columns, rows } : page)),
  };
}

const questions: Question[] = [
  {
    title: "ready book, the depth",
    book: ready(),
    page: "Draft",
    address: "B8",
    typed: (n) => `${9 + (n % 40) / 16}`,
  },
  {
    title: "ready book, the hip ease",
    book: ready(),
    page: "Draft",
    address: "B9",
    typed: (n) => `${1 + (n % 40) / 16}`,
  },
  {
    title: "1,000 formulas, their waist",
    book: thousand(),
    page: "Draft",
    address: "A1",
    typed: (n) => `${27 + (n % 40) / 8}`,
  },
];

let here: Visit;
beforeAll(async () => {
  here = await visit();
}, 120_000);
afterAll(() => here.end());

const at = (sorted: readonly number[], share: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;

function told(times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  return `${at(sorted, 0.5).toFixed(1)} / ${at(sorted, 0.95).toFixed(1)}`;
}

/** The command alone: the book edited and every dependent calculated, with no page that listens. */
function engineTimes({ book, page, address, typed }: Question): number[] {
  const store = new Store(book, layDesk);
  const place = findPlace(book, `${page}!${address}`)!;
  return Array.from({ length: PRESSES }, (_, n) => {
    const begun = performance.now();
    store.run(typeCells([{ ...place, typed: typed(n + 1) }]));
    return performance.now() - begun;
  });
}

/** Opens a book as a file dropped on the page. */
async function open(page: Page, book: Book): Promise<void> {
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], "book.json", { type: "application/json" }));
    dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
  }, writeBook(book));
  await page.getByText(book.title).first().waitFor();
}

interface Heard {
  /** Milliseconds from the key to the first frame painted after it, and to the page's last change. */
  painted: number;
  settled: number;
}

/** Listens for Enter: when the next frame is painted, and when the page has changed for the last time. */
function listen(): void {
  const heard: Heard[] = [];
  Object.assign(globalThis, { heard });
  addEventListener(
    "keydown",
    ({ key, timeStamp }) => {
      if (key !== "Enter") return;
      const one: Heard = { painted: 0, settled: 0 };
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

async function pageTimes(question: Question): Promise<Heard[]> {
  const { page } = await here.open();
  await open(page, question.book);
  await page.getByRole("navigation").getByRole("button", { name: question.page, exact: true }).click();
  await page.evaluate(listen);
  await cell(page, question.address).click();
  for (let n = 1; n <= PRESSES; n += 1) {
    await page.keyboard.type(question.typed(n));
    await page.keyboard.press("Enter");
    await page.waitForTimeout(450);
    await page.keyboard.press("ArrowUp");
  }
  const heard = await page.evaluate(() => (globalThis as unknown as { heard: Heard[] }).heard);
  await page.context().close();
  return heard;
}

it("keystroke to paint", async () => {
  const rows: string[][] = [["p50 / p95, ms", "engine", "painted", "panels settled"]];
  for (const question of questions) {
    const heard = await pageTimes(question);
    rows.push([
      question.title,
      told(engineTimes(question)),
      told(heard.map(({ painted }) => painted)),
      told(heard.map(({ settled }) => settled)),
    ]);
  }
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]!.length)));
  console.log(rows.map((row) => row.map((text, i) => text.padEnd(widths[i]!)).join("   ")).join("\n"));
});
