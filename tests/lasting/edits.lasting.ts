/** npm run lasting: somebody works for minutes without a pause. Memory stays flat, and 500 steps undone and redone give the same book. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { Random } from "../attack/random.ts";
import { type } from "../browser/kept.ts";
import { download, open } from "../browser/page.ts";

const MINUTES = Number(process.env.MINUTES);
const SEED = Number(process.env.SEED);
/** How many steps at most are undone and redone at the end, and after how many edits memory is looked at. */
const UNDONE = 500;
const LOOK = 50;
/** Memory may grow by this share, and by the steps that undo keeps, in megabytes. */
const SHARE = 1.25;
const STEPS = 3;

/** Megabytes that the page's program holds on to. */
async function held(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send("HeapProfiler.collectGarbage");
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  await session.detach();
  return usedSize / 1e6;
}

/** The book as a file has it, without the lays, which are found beside the work. */
async function bookOf(page: Page): Promise<string> {
  const { text } = await download(page, () => page.keyboard.press("Control+s"));
  return JSON.stringify({ ...JSON.parse(text), lays: {} });
}

/** An edit of the first page: a measurement, a word, a formula, or a cell emptied. */
async function edit(page: Page, random: Random, number: number): Promise<void> {
  const row = random.between(21, 24);
  const what = random.next();
  if (what < 0.3) return type(page, random.pick(["B10", "B11", "B12"]), String(random.between(200, 400) / 8));
  if (what < 0.6) return type(page, `A${row}`, `word ${number}`);
  if (what < 0.85)
    return type(page, `B${row}`, `=${random.pick(["B10*2", "SUM(B10:B12)", "B4+B23", "hip/"])}`);
  await page.keyboard.press(random.pick(["Control+z", "Control+y", "Delete"]));
}

const mean = (figures: readonly number[]) => figures.reduce((sum, one) => sum + one, 0) / figures.length;

it(`works for ${MINUTES} minutes`, async () => {
  const page = await open();
  page.setDefaultTimeout(60_000);
  const random = new Random(SEED);
  const memory: number[] = [];
  const until = Date.now() + MINUTES * 60_000;
  let edits = 0;
  for (; Date.now() < until; edits += 1) {
    await edit(page, random, edits);
    if (edits % LOOK === LOOK - 1) memory.push(await held(page));
  }
  const steps = Math.min(UNDONE, edits);
  // The last step is one of its own, so that nothing more can be redone.
  await type(page, "A21", "the last word");
  const book = await bookOf(page);
  for (let i = 0; i < steps; i += 1) await page.keyboard.press("Control+z");
  const undone = await bookOf(page);
  for (let i = 0; i < steps; i += 1) await page.keyboard.press("Control+y");
  const again = await bookOf(page);
  const third = Math.ceil(memory.length / 3);
  const [early, late] = [mean(memory.slice(third, 2 * third)), mean(memory.slice(-third))];
  console.log(
    `${edits} edits; ${early.toFixed(1)} MB held in the middle third, ${late.toFixed(1)} MB in the last; ${steps} undone and redone: ${again === book ? "the same book" : "ANOTHER BOOK"}. Seed ${SEED}.`,
  );
  expect(undone).not.toBe(book);
  expect(again).toBe(book);
  expect(late).toBeLessThan(early * SHARE + STEPS);
});
