/**
 * The whole job in the real page from an empty profile to a finished cut list: a gored skirt from one's own
 * measurements, by keyboard alone and by touch alone. Every key, tap and typed text is counted, step by step;
 * more of them than are written here means that the way has become longer. COUNTS=1 prints them.
 */
import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { lookUp } from "../../src/book/names.ts";
import { readBook } from "../../src/book/read.ts";
import { Engine } from "../../src/engine/engine.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { tooSmall } from "./fits.ts";
import { cell, download, open } from "./page.ts";

const STEPS = [
  "begin a gored skirt",
  "look at the piece in the whole window",
  "change a measurement",
  "read the length of cloth",
  "add a piece to the cut list",
  "write a line of the fitting log",
  "go to the problem and correct it",
  "save a file",
] as const;
type Step = (typeof STEPS)[number];

/** Actions and typed texts of each step, by keyboard and by touch. */
const MOST: Record<Step, { keyboard: readonly [number, number]; touch: readonly [number, number] }> = {
  "begin a gored skirt": { keyboard: [8, 6], touch: [8, 5] },
  "look at the piece in the whole window": { keyboard: [6, 0], touch: [2, 0] },
  "change a measurement": { keyboard: [5, 1], touch: [5, 1] },
  "read the length of cloth": { keyboard: [2, 0], touch: [1, 0] },
  "add a piece to the cut list": { keyboard: [5, 3], touch: [9, 3] },
  "write a line of the fitting log": { keyboard: [9, 4], touch: [13, 4] },
  "go to the problem and correct it": { keyboard: [10, 1], touch: [8, 1] },
  "save a file": { keyboard: [1, 0], touch: [1, 0] },
};

/** Counts what a hand does, step by step. */
class Hand {
  readonly page: Page;
  readonly counts: Record<string, [number, number]> = {};
  #now: [number, number] = [0, 0];

  constructor(page: Page) {
    this.page = page;
  }

  step(name: Step): void {
    this.#now = [0, 0];
    this.counts[name] = this.#now;
  }

  async keys(...keys: string[]): Promise<void> {
    for (const key of keys) {
      this.#now[0] += 1;
      await this.page.keyboard.press(key);
    }
  }

  async tap(what: Locator): Promise<void> {
    this.#now[0] += 1;
    await what.tap();
  }

  async types(text: string): Promise<void> {
    this.#now[1] += 1;
    await this.page.keyboard.type(text);
  }

  /** What is typed on the keyboard that a touch screen shows: it shows one only for a field. */
  async typesInField(text: string): Promise<void> {
    await expect.poll(() => focused(this.page)).toMatch(/^(?:INPUT|TEXTAREA)$/);
    await this.types(text);
  }
}

const focused = (page: Page) => page.evaluate(() => document.activeElement?.tagName ?? "");
const pageNow = (page: Page) => page.locator("[aria-current='page']").textContent();
const chosen = (page: Page) => page.locator(".formula-place").textContent();
const piece = (page: Page) => page.getByRole("img", { name: /^Drawing of gore_cut/ });
const problems = (page: Page) => page.getByRole("contentinfo").getByRole("button").last().textContent();

/** The counts, and what the saved file has: the page and the engine without a page agree on the cloth, once it is laid. */
async function finish(hand: Hand, by: "keyboard" | "touch", text: string): Promise<void> {
  const reading = readBook(text);
  if ("reason" in reading) throw new Error(reading.reason);
  const { book } = reading;
  const engine = new Engine(book, layDesk);
  const laid = engine.view(lookUp(book, "cloth_length")!).shown;
  await expect.poll(() => cell(hand.page, "B9").textContent()).toBe(laid);
  engine.destroy();
  expect(book.pages.map(({ title }) => title)).toEqual(["Measure", "Draft", "Fit", "Cut", "Trimmings"]);
  expect(book.pages[2]!.rows[0]!.slice(0, 4)).toEqual(["2026-11-30", "1", "gore", "side"]);
  expect(book.pages[3]!.rows[2]!.slice(0, 3)).toEqual(["pocket", "=RECTANGLE(8; 10)", "2"]);
  if (process.env.COUNTS) console.table(hand.counts);
  for (const step of STEPS) {
    const [actions, texts] = hand.counts[step]!;
    expect([step, actions <= MOST[step][by][0], texts <= MOST[step][by][1]]).toEqual([step, true, true]);
  }
}

it("a gored skirt is cut by keyboard alone", async () => {
  const page = await open();
  const hand = new Hand(page);

  hand.step("begin a gored skirt");
  await hand.keys("Alt+n");
  await expect.poll(() => focused(page)).toBe("INPUT");
  await hand.types("gored");
  await hand.keys("Enter");
  await page.locator(".begin-figures").waitFor();
  await hand.types("the widow");
  await hand.keys("Tab");
  for (const figure of ["32", "46 1/2", "8 1/2", "39"]) {
    await hand.keys("Tab");
    await hand.types(figure);
  }
  await hand.keys("Enter");
  await expect
    .poll(() => page.getByLabel("Title of the book").inputValue())
    .toBe("Gored skirt for the widow");
  await expect.poll(() => focused(page)).toBe("TD");

  hand.step("look at the piece in the whole window");
  await piece(page).waitFor();
  const narrow = (await piece(page).boundingBox())!.width;
  await hand.keys("F6", "Tab", "Tab", "Enter");
  await expect.poll(async () => (await piece(page).boundingBox())!.width).toBeGreaterThan(2 * narrow);
  await hand.keys("Escape", "Shift+F6");
  await expect.poll(() => focused(page)).toBe("TD");

  hand.step("change a measurement");
  await hand.keys("ArrowDown", "ArrowDown", "ArrowDown", "ArrowRight");
  await hand.types("33");
  await hand.keys("Enter");
  await expect.poll(() => cell(page, "B4").textContent()).toBe("33");

  hand.step("read the length of cloth");
  await hand.keys("Alt+PageDown", "Alt+PageDown");
  await expect.poll(() => pageNow(page)).toBe("Cut");
  await expect.poll(() => cell(page, "B9").textContent()).toMatch(/\d/);
  await expect.poll(() => focused(page)).toBe("TD");

  hand.step("add a piece to the cut list");
  await hand.keys("ArrowDown", "ArrowDown");
  await hand.types("pocket");
  await hand.keys("Tab");
  await hand.types("=RECTANGLE(8; 10)");
  await hand.keys("Tab");
  await hand.types("two");
  await hand.keys("Enter");

  hand.step("write a line of the fitting log");
  await hand.keys("Shift+F6", "Shift+Tab", "Shift+Tab", "Enter");
  await page.locator("input[aria-label='Title of the page']:focus").waitFor();
  await hand.keys("Enter");
  await expect.poll(() => focused(page)).toBe("TD");
  expect([await pageNow(page), await chosen(page)]).toEqual(["Fit", "A1"]);
  for (const text of ["2026-11-30", "1", "gore", "side"]) {
    await hand.types(text);
    await hand.keys(text === "side" ? "Enter" : "Tab");
  }
  await expect.poll(() => chosen(page)).toBe("A2");

  hand.step("go to the problem and correct it");
  await expect.poll(() => problems(page)).toMatch(/^[1-9]\d* problems?$/);
  await hand.keys("Alt+l");
  await page.locator(".check:focus").waitFor();
  await hand.keys("Enter");
  await expect
    .poll(async () => `${await pageNow(page)} ${await chosen(page)} ${await focused(page)}`)
    .toBe("Cut B9 TD");
  await hand.keys(...Array<string>(6).fill("ArrowUp"), "ArrowRight");
  await hand.types("2");
  await hand.keys("Enter");
  await expect.poll(() => problems(page)).toBe("No problems");

  hand.step("save a file");
  const file = await download(page, () => hand.keys("Control+s"));
  await finish(hand, "keyboard", file.text);
});

it("a gored skirt is cut by touch alone on a tablet", async () => {
  const page = await open({ viewport: { width: 768, height: 1024 }, hasTouch: true, isMobile: true });
  const hand = new Hand(page);
  const button = (name: string) => page.getByRole("button", { name, exact: true });
  const turn = (title: string) =>
    hand.tap(page.getByRole("navigation").getByRole("button", { name: title, exact: true }));
  /** A cell is chosen by a tap; the next tap opens it. */
  const write = async (address: string, text: string) => {
    if ((await chosen(page)) !== address) await hand.tap(cell(page, address));
    await expect.poll(() => chosen(page)).toBe(address);
    await hand.tap(cell(page, address));
    await expect.poll(() => focused(page)).toBe("TEXTAREA");
    const before = await page.locator("textarea:focus").inputValue();
    for (const _letter of before) await hand.keys("Backspace");
    await hand.typesInField(text);
    await hand.keys("Enter");
  };
  await expect.poll(() => tooSmall(page)).toEqual([]);

  hand.step("begin a gored skirt");
  await hand.tap(button("New"));
  await hand.tap(page.getByRole("button", { name: /^Gored skirt/ }));
  await page.locator(".begin-figures").waitFor();
  await expect.poll(() => tooSmall(page)).toEqual([]);
  for (const [label, text] of [
    ["Who is it for?", "the widow"],
    ["Waist girth (needed)", "32"],
    ["Hip girth (needed)", "46 1/2"],
    ["Waist to hip (needed)", "8 1/2"],
    ["Waist to hem (needed)", "39"],
  ] as const) {
    await hand.tap(page.getByLabel(label));
    await hand.typesInField(text);
  }
  await hand.tap(button("Make a new book"));
  await expect
    .poll(() => page.getByLabel("Title of the book").inputValue())
    .toBe("Gored skirt for the widow");

  hand.step("look at the piece in the whole window");
  await hand.tap(button("Fill the window with Drawing"));
  await piece(page).waitFor();
  await expect.poll(() => tooSmall(page)).toEqual([]);
  await hand.tap(button("Usual size of Drawing"));

  hand.step("change a measurement");
  await write("B4", "33");
  await expect.poll(() => cell(page, "B4").textContent()).toBe("33");

  hand.step("read the length of cloth");
  await turn("Cut");
  await expect.poll(() => cell(page, "B9").textContent()).toMatch(/\d/);

  hand.step("add a piece to the cut list");
  await write("A3", "pocket");
  await write("B3", "=RECTANGLE(8; 10)");
  await write("C3", "two");

  hand.step("write a line of the fitting log");
  await hand.tap(button("Add a page to Fit"));
  await expect.poll(() => focused(page)).toBe("INPUT");
  await expect.poll(() => tooSmall(page)).toEqual([]);
  await hand.keys("Enter");
  await expect.poll(async () => `${await pageNow(page)} ${await chosen(page)}`).toBe("Fit A1");
  await write("A1", "2026-11-30");
  await write("B1", "1");
  await write("C1", "gore");
  await write("D1", "side");

  hand.step("go to the problem and correct it");
  await expect.poll(() => problems(page)).toMatch(/^[1-9]\d* problems?$/);
  await hand.tap(page.getByRole("contentinfo").getByRole("button").last());
  await page.locator(".check").first().waitFor();
  await expect.poll(() => tooSmall(page)).toEqual([]);
  await hand.tap(page.locator(".check").first());
  await expect.poll(async () => `${await pageNow(page)} ${await chosen(page)}`).toBe("Cut B9");
  await write("C3", "2");
  await expect.poll(() => problems(page)).toBe("No problems");

  hand.step("save a file");
  const file = await download(page, () => hand.tap(button("Save a file")));
  await finish(hand, "touch", file.text);
});
