/**
 * From the keystroke and from a move of the slider to the paint in Chromium, and the engine's part
 * of it in Node, for the ready book and for a book of 1,000 formulas that all rest on one cell.
 * PRESSES=100 sets how often. Goals: p95 under 16 ms for the engine, 50 ms from a key to the paint, 16.7 ms from a move.
 * npx vitest run --config tests/speed/vitest.config.ts tests/speed/page.speed.ts
 */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { it } from "vitest";
import { findPlace } from "../../src/book/address.ts";
import { readBook } from "../../src/book/read.ts";
import { type Book, blankBook } from "../../src/book/shape.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { typeCells } from "../../src/store/commands.ts";
import { Store } from "../../src/store/store.ts";
import { cell, open } from "../browser/page.ts";
import { type Heard, heardWhile, openBook, print, told } from "./heard.ts";

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

async function keystrokes(question: Question): Promise<Heard[]> {
  const page = await open();
  await openBook(page, question.book);
  await page.getByRole("navigation").getByRole("button", { name: question.page, exact: true }).click();
  await cell(page, question.address).click();
  const heard = await heardWhile(page, ["Enter"], async () => {
    for (let n = 1; n <= PRESSES; n += 1) {
      await page.keyboard.type(question.typed(n));
      await page.keyboard.press("Enter");
      await page.waitForTimeout(450);
      await page.keyboard.press("ArrowUp");
    }
  });
  return heard;
}

it("keystroke to paint", async () => {
  const rows: string[][] = [["", "engine", "painted", "panels settled"]];
  for (const question of questions) {
    const heard = await keystrokes(question);
    rows.push([
      question.title,
      told(engineTimes(question)),
      told(heard.map(({ painted }) => painted)),
      told(heard.map(({ settled }) => settled)),
    ]);
  }
  print("from the key to the paint, p50 / p95 in ms", rows);
});

/** How many moves the slider of depth has room for from where it stands. */
const ROOM = 16;

/** One tape mark at a time, to and fro, so that every press is a move and no lay is known but on the way back. */
async function slides(watched: string): Promise<Heard[]> {
  const page = await open();
  await page.getByRole("button", { name: "What if" }).click();
  await page.getByLabel("Change", { exact: true }).selectOption({ label: "depth" });
  await page.getByLabel("Watch").selectOption({ label: watched });
  const slider = page.getByRole("slider", { name: "depth" });
  await slider.focus();
  const heard = await heardWhile(page, ["ArrowRight", "ArrowLeft"], async () => {
    for (let n = 0; n < PRESSES; n += 1) {
      const before = await slider.inputValue();
      await page.keyboard.press(Math.floor(n / ROOM) % 2 === 0 ? "ArrowRight" : "ArrowLeft");
      if ((await slider.inputValue()) === before)
        throw new Error("the slider is at its end: it did not move");
      await page.waitForTimeout(450);
    }
  });
  return heard;
}

it("slide to paint", async () => {
  const rows: string[][] = [["watched", "painted", "all settled"]];
  for (const watched of ["hem", "cloth_length_a"]) {
    const heard = await slides(watched);
    rows.push([
      watched,
      told(heard.map(({ painted }) => painted)),
      told(heard.map(({ settled }) => settled)),
    ]);
  }
  print("one move of the slider of depth, whole book and drawing following, p50 / p95 in ms", rows);
});

/** The times between the page's frames, and its tasks over 50 ms, while `act` goes on. */
async function framesWhile(
  page: Page,
  act: () => Promise<void>,
): Promise<{ gaps: number[]; tasks: number[] }> {
  await page.evaluate(() => {
    const seen = { gaps: [] as number[], tasks: [] as number[], ended: false };
    Object.assign(globalThis, { seen });
    new PerformanceObserver((list) => {
      if (!seen.ended) seen.tasks.push(...list.getEntries().map(({ duration }) => duration));
    }).observe({ type: "longtask" });
    let before = 0;
    const frame = (now: number) => {
      if (seen.ended) return;
      if (before > 0) seen.gaps.push(now - before);
      before = now;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  await act();
  return page.evaluate(() => {
    const { seen } = globalThis as unknown as { seen: { gaps: number[]; tasks: number[]; ended: boolean } };
    seen.ended = true;
    return seen;
  });
}

/** A drag of the slider's thumb to and fro, a move of the pointer for each frame; and the same drag beside it, where nothing moves. */
it("frames while the slider is dragged", async () => {
  const rows: string[][] = [
    ["watched", "figures", "frames, p50 / p95", "over 25 ms", "tasks over 50 ms", "no slider"],
  ];
  for (const watched of ["hem", "cloth_length_a"]) {
    const page = await open();
    await page.getByRole("button", { name: "What if" }).click();
    await page.getByLabel("Change", { exact: true }).selectOption({ label: "depth" });
    await page.getByLabel("Watch").selectOption({ label: watched });
    const box = (await page.getByRole("slider", { name: "depth" }).boundingBox())!;
    const middle = box.y + box.height / 2;
    const drag = (y: number) => async () => {
      await page.mouse.move(box.x + box.width / 2, y);
      await page.mouse.down();
      for (let n = 0; n < 240; n += 1) {
        await page.mouse.move(box.x + box.width * (0.5 + 0.45 * Math.sin(n / 20)), y);
        await page.waitForTimeout(8);
      }
      await page.mouse.up();
    };
    await page.evaluate(() => {
      const moved = { count: 0 };
      Object.assign(globalThis, { moved });
      addEventListener("input", () => (moved.count += 1), true);
    });
    await framesWhile(page, drag(middle));
    await page.waitForTimeout(1000);
    const idle = await framesWhile(page, drag(box.y + 4 * box.height));
    const { gaps, tasks } = await framesWhile(page, drag(middle));
    const count = await page.evaluate(
      () => (globalThis as unknown as { moved: { count: number } }).moved.count,
    );
    if (count < 100) throw new Error(`only ${count} figures came: the slider was not dragged`);
    const late = gaps.filter((gap) => gap > 25).length;
    rows.push([
      watched,
      String(count),
      told(gaps),
      `${late} of ${gaps.length}`,
      String(tasks.length),
      told(idle.gaps),
    ]);
  }
  print("a drag of the slider of depth, whole book and drawing following, ms between frames", rows);
});
