/**
 * The main job in the real page: from the tape to the cloth, by keyboard and mouse. What the page
 * must show is worked by the same engine without a page; that engine's figures are proved elsewhere.
 */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { HEM_AT } from "../../functions/flare/HEM_AT.ts";
import type { Place } from "../../src/book/address.ts";
import { type } from "../../src/book/edit.ts";
import { lookUp } from "../../src/book/names.ts";
import { readBook } from "../../src/book/read.ts";
import type { Book } from "../../src/book/shape.ts";
import { typedAt } from "../../src/book/shape.ts";
import { Engine } from "../../src/engine/engine.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { cell, openReady } from "./page.ts";

const reading = readBook(
  readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url), "utf8"),
);
if ("reason" in reading) throw new Error(reading.reason);
const ready: Book = reading.book;
const at = (name: string): Place => lookUp(ready, name)!;

/** The chosen wearer's figure is picked from those of all wearers by name: the first is the one drawn. */
function takenFor(name: string): Place {
  const { page, row, column } = at(name);
  const first = /^=SWITCH\(wearer;"[^"]*";([A-Z]+\d+);/.exec(typedAt(ready, page, row, column))![1]!;
  return lookUp(ready, first, page)!;
}

/** What the named cells show once these cells are typed into the ready book. */
function worked(changes: readonly (Place & { typed: string })[], names: readonly string[]): string[] {
  const engine = new Engine(type(ready, changes), layDesk);
  const shown = names.map((name) => engine.view(at(name)).shown);
  engine.destroy();
  return shown;
}

const RESULTS = [
  "waist_seam",
  "hem",
  "spread_per_gap",
  "curved_hem",
  "skirt_piece",
  "cloth_length_a",
  "cloth_buy_b",
];

let page: Page;

beforeEach(async () => {
  page = await openReady();
});

/** Turns to a page of the book, unless it is shown. */
async function turn(index: number): Promise<void> {
  const { title } = ready.pages[index]!;
  if ((await page.locator("[aria-current='page']").textContent()) === title) return;
  await page.getByRole("navigation").getByRole("button", { name: title, exact: true }).click();
}

/** Goes to a cell as a hand on the keyboard does. */
async function goTo({ page: index, row, column }: Place): Promise<void> {
  await turn(index);
  await cell(page, "A2").click();
  // A second click may have opened the editor.
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+Home");
  for (let i = 0; i < row; i += 1) await page.keyboard.press("ArrowDown");
  for (let i = 0; i < column; i += 1) await page.keyboard.press("ArrowRight");
}

async function enter(place: Place, text: string): Promise<void> {
  await goTo(place);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

/** What the grid shows in named cells: a cell that is on the screen is read there, another one is gone to. */
async function shown(names: readonly string[]): Promise<string[]> {
  const texts: string[] = [];
  for (const name of names) {
    const place = at(name);
    await turn(place.page);
    const row = page
      .locator(".ht_master tbody tr, .ht_clone_inline_start tbody tr")
      .filter({ has: page.locator("th", { hasText: new RegExp(`^\\s*${place.row + 1}\\s*$`) }) });
    let seen = row.locator(`td[aria-colindex="${place.column + 2}"]`);
    if ((await seen.count()) === 0) {
      await goTo(place);
      seen = page.locator(".ht_master td.current");
    }
    texts.push((await seen.last().textContent()) ?? "");
  }
  return texts;
}

const drawing = () => page.locator("svg.picture > title, .lay-what").first().textContent();
const draw = (name: string) => page.locator(".drawing-head select").selectOption(`Pinned: ${name}`);

describe("the first start", () => {
  it("shows the ready book with a piece drawn and no problems", async () => {
    await expect.poll(() => page.getByLabel("Title of the book").inputValue()).toBe(ready.title);
    await expect.poll(() => page.getByRole("contentinfo").textContent()).toBe("No problems");
    await expect.poll(() => drawing()).toContain("piece");
    await expect.poll(() => page.locator("svg.picture .outline").count()).toBeGreaterThan(0);
  });
});

describe("from the tape to the cloth", () => {
  it("a wider hip is followed by hem, spread, piece and cloth", async () => {
    await draw("skirt_piece");
    const before = await drawing();
    const outline = await page.locator("svg.picture .outline").first().getAttribute("d");
    const change = { ...takenFor("hip"), typed: "46 1/4" };
    await enter(change, change.typed);
    await expect.poll(() => shown(RESULTS)).toEqual(worked([change], RESULTS));
    expect(worked([change], RESULTS)).not.toEqual(worked([], RESULTS));
    await expect.poll(() => drawing()).not.toBe(before);
    await expect.poll(() => page.locator("svg.picture .outline").first().getAttribute("d")).not.toBe(outline);
  });

  it.each([
    ["depth", "11 1/2", "skirt_piece"],
    ["sections", "7", "spread_per_gap"],
    ["pleats", "3", "skirt_piece"],
    ["cloth_width_a", "36", "cloth_length_a"],
  ])("another %s is followed by the drawing and every figure", async (name, typed, drawn) => {
    await draw(drawn);
    const before = await drawing();
    const change = { ...at(name), typed };
    await enter(change, typed);
    await expect.poll(drawing).not.toBe(before);
    await expect.poll(() => shown(RESULTS)).toEqual(worked([change], RESULTS));
  });

  it("the lay drawn is as long as the cell says and has every piece in it", async () => {
    await goTo(at("cloth_length_a"));
    await page.locator(".lay-picture").waitFor();
    const [length] = worked([], ["cloth_length_a"]);
    await expect.poll(() => drawing()).toContain(`${length} in`);
    const copies = [1, 2, 3, 4].map((row) => Number(typedAt(ready, at("cloth_length_a").page, row - 1, 2)));
    await expect.poll(() => page.locator(".lay-copy").count()).toBe(copies.reduce((a, b) => a + b));
  });

  it("undo takes a change back everywhere, redo brings it again", async () => {
    const change = { ...takenFor("hip"), typed: "46" };
    await enter(change, change.typed);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await expect.poll(() => shown(["hem", "cloth_length_a"])).toEqual(worked([], ["hem", "cloth_length_a"]));
    await page.keyboard.press("Control+y");
    await expect
      .poll(() => shown(["hem", "cloth_length_a"]))
      .toEqual(worked([change], ["hem", "cloth_length_a"]));
  });

  it("a figure that can't be is said at the foot, and choosing it there leads to the cell", async () => {
    const hip = takenFor("hip");
    await enter(hip, "0");
    const foot = page.getByRole("contentinfo");
    await expect.poll(() => foot.textContent()).toMatch(/^\d+ problems?$/);
    await page.keyboard.press("Alt+l");
    const first = foot.getByRole("listitem").first();
    const where = await first.locator(".check-where").textContent();
    await expect.poll(() => first.locator(".check-what").textContent()).toMatch(/\w+ must be .*, not 0/);
    await first.getByRole("button", { name: /^Go to Measure!/ }).waitFor();
    await first.locator(".check").click();
    const name = await page.getByLabel("Name of the cell").inputValue();
    expect(where).toContain(name);
    await page.keyboard.press("Alt+l");
    await enter(hip, typedAt(ready, hip.page, hip.row, hip.column));
    await expect.poll(() => foot.textContent()).toMatch(/^No problems/);
  });

  it("Working goes from the cloth back to the tape, and each cell in it can be gone to", async () => {
    await goTo(at("hem"));
    const working = page.getByRole("region", { name: "Working", exact: true });
    await expect.poll(() => working.textContent()).toContain("HEM_AT");
    const text = (await working.textContent())!;
    for (const name of ["waist_seam", "hip_ease", "depth", "fullness"]) expect(text).toContain(name);
    // Where the function is from, which comes with the texts of the help.
    await expect.poll(() => working.textContent()).toContain(`Source: ${HEM_AT.source}`);
    await working.getByRole("button", { name: "hip", exact: true }).first().click();
    await expect
      .poll(() => page.getByLabel("Selected cell", { exact: true }).textContent())
      .toBe(ready.names.hip!.split("!")[1]);
    await expect.poll(() => working.textContent()).toContain("Used by");
  });

  it("the unit can be changed without moving an answer", async () => {
    const [hem] = worked([], ["hem"]);
    await page.getByLabel("Unit").selectOption("centimetres");
    await expect.poll(() => shown(["hem"])).not.toEqual([hem]);
    const [centimetres] = await shown(["hem"]);
    await page.getByLabel("Unit").selectOption("millimetres");
    expect((Number(await shown(["hem"])) / 10).toFixed(1)).toBe(Number(centimetres).toFixed(1));
    await page.getByLabel("Unit").selectOption("inches");
    await expect.poll(() => shown(RESULTS)).toEqual(worked([], RESULTS));
  });

  it("a longer search finds a shorter lay, and the book keeps it", async () => {
    await goTo(at("cloth_length_a"));
    // Good enough is a little less than the lay made at once: the first that is better ends the search.
    const engine = new Engine(ready, layDesk);
    const length = engine.value(at("cloth_length_a")) as number;
    engine.destroy();
    await page.getByLabel("Good enough").fill(String(length - 0.02));
    await page.getByRole("button", { name: "Look for a better lay" }).click();
    await page.locator(".lay-state", { hasText: "The book keeps it." }).waitFor();
    const [better] = await shown(["cloth_length_a"]);
    await expect.poll(() => page.locator(".kept").textContent()).toBe("Saved in this browser");
    await page.reload();
    await cell(page, "A1").waitFor();
    await expect.poll(() => shown(["cloth_length_a"])).toEqual([better]);
  });
});
