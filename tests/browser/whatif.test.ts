/** What if in the real page. What it must show is worked by the same engine without a page. */
import { readFileSync } from "node:fs";
import Papa from "papaparse";
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { type } from "../../src/book/edit.ts";
import { lookUp } from "../../src/book/names.ts";
import { readBook } from "../../src/book/read.ts";
import type { Book } from "../../src/book/shape.ts";
import { Engine } from "../../src/engine/engine.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { violations } from "./axe.ts";
import { download, openReady } from "./page.ts";

const reading = readBook(
  readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url), "utf8"),
);
if ("reason" in reading) throw new Error(reading.reason);
const ready: Book = reading.book;

/** What a named cell of the ready book shows when the depth is typed so. */
function shownAt(depth: string, name: string): string {
  const engine = new Engine(type(ready, [{ ...lookUp(ready, "depth")!, typed: depth }]), layDesk);
  const { shown } = engine.view(lookUp(ready, name)!);
  engine.destroy();
  return shown;
}

// On a busy machine a page with its worker takes its time.
describe("What if", () => {
  let page: Page;
  beforeEach(async () => {
    page = await openReady();
    await page.getByRole("button", { name: "What if" }).click();
    await page.getByLabel("Change", { exact: true }).selectOption({ label: "depth" });
  });

  const row = (name: string) =>
    page.getByRole("row").filter({ has: page.getByRole("rowheader", { name, exact: true }) });
  const column = async (name: string, i: number) =>
    (await row(name).first().locator("td").nth(i).textContent())!.trim();
  const accessible = async () => expect(await violations(page, ".side")).toEqual([]);

  it("lets the book follow the slider, keeps it as one step, and undoes it as one", async () => {
    await page.getByLabel("Watch").selectOption({ label: "hem" });
    const slider = page.getByRole("slider", { name: "depth" });
    await slider.focus();
    for (let i = 0; i < 8; i += 1) await page.keyboard.press("ArrowRight");
    await page.waitForFunction(
      (text) => document.querySelector(".watch")?.textContent?.includes(text),
      shownAt("10", "hem"),
    );
    await expect.poll(() => slider.getAttribute("aria-valuetext")).toBe("10");
    await expect.poll(() => column("hem", 0)).toBe(shownAt("9", "hem"));
    await expect.poll(() => column("hem", 1)).toBe(shownAt("10", "hem"));
    await expect.poll(() => column("hem", 2)).toBe("+2");
    await expect.poll(() => page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);

    await page.getByRole("button", { name: "Keep", exact: true }).click();
    await expect.poll(() => column("hem", 0)).toBe(shownAt("10", "hem"));
    const undo = page.getByRole("button", { name: "Undo" });
    await expect.poll(() => undo.getAttribute("title")).toBe("Undo: keep depth as tried");
    await undo.click();
    await expect.poll(() => column("hem", 0)).toBe(shownAt("9", "hem"));
    await expect.poll(() => undo.isDisabled()).toBe(true);
  });

  it("drops what was tried on Escape", async () => {
    const slider = page.getByRole("slider", { name: "depth" });
    await slider.focus();
    await page.keyboard.press("ArrowLeft");
    await page.getByRole("button", { name: "Discard" }).waitFor();
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Discard" }).waitFor({ state: "detached" });
    await expect.poll(() => slider.getAttribute("aria-valuetext")).toBe("9");
    await expect.poll(() => page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
  });

  it("plots the range that is asked for, and saves it as the very rows the engine gives", async () => {
    await page.getByLabel("Watch").selectOption({ label: "curved_hem" });
    await page.getByLabel("From", { exact: true }).fill("8");
    await page.getByLabel("To", { exact: true }).fill("10");
    await page.getByLabel("Step", { exact: true }).fill("1/2");
    await page.keyboard.press("Enter");
    await page.getByText("All 5 steps as a table").waitFor();
    await page.locator(".plots canvas").first().waitFor();
    const csv = await download(page, () => page.getByRole("button", { name: "Save as CSV" }).click());
    const { data, errors } = Papa.parse<string[]>(csv.text, { newline: "\r\n" });
    const [head, ...lines] = data;
    const at = head!.indexOf("curved_hem");
    expect([errors, lines.pop()]).toEqual([[], [""]]);
    const engine = new Engine(ready, layDesk);
    for (const [i, depth] of [8, 8.5, 9, 9.5, 10].entries()) {
      engine.become(type(ready, [{ ...lookUp(ready, "depth")!, typed: String(depth) }]));
      const cells = lines[i]!;
      expect(cells[0]).toBe(String(depth));
      expect(Number(cells[at])).toBeCloseTo(engine.value(lookUp(ready, "curved_hem")!) as number, 9);
    }
    engine.destroy();
    const picture = await download(page, () =>
      page.getByRole("button", { name: "Save as a picture" }).click(),
    );
    expect(picture.bytes.subarray(1, 4).toString()).toBe("PNG");
    await accessible();
  });

  it("sweeps laid cloth with a helper that its worker starts, and shows every step", async () => {
    const cores = await page.evaluate(() => navigator.hardwareConcurrency);
    const asked = page.context().waitForEvent("request", {
      predicate: (request) => /\/ahead-worker-[^/]*\.js$/.test(request.url()),
    });
    await page.getByLabel("Watch").selectOption({ label: "cloth_length_a" });
    await page.getByLabel("From", { exact: true }).fill("7");
    await page.getByLabel("To", { exact: true }).fill("13");
    await page.getByLabel("Step", { exact: true }).fill("1/16");
    await page.getByLabel("Step", { exact: true }).press("Enter");
    if (cores > 1) await asked;
    await page.getByText("All 97 steps as a table").waitFor();
    await expect.poll(() => column("cloth_length_a", 0)).toBe(`≈ ${shownAt("9", "cloth_length_a")}`);
  });

  it("says in place what is wrong with a range, and keeps what was typed", async () => {
    await page.getByLabel("From", { exact: true }).fill("deep");
    await page.getByLabel("From", { exact: true }).press("Enter");
    await expect
      .poll(() => page.getByRole("alert").filter({ hasText: "from must be" }).textContent())
      .toBe("from must be a length such as 8 1/2, not “deep”");
    await expect.poll(() => page.getByLabel("From", { exact: true }).inputValue()).toBe("deep");
    await page.getByLabel("From", { exact: true }).fill("20");
    await page.getByLabel("From", { exact: true }).press("Enter");
    await page.getByText("from must be at most to: depth can't go from 20 up to 11 1/4").waitFor();
  });

  it("shows two cells varied at once as a table that reads without colour", async () => {
    await page.getByLabel("and", { exact: true }).selectOption({ label: "hip_ease" });
    const heat = page.getByRole("region", { name: / by depth and hip_ease$/ }).first();
    await heat.waitFor();
    await expect.poll(() => heat.textContent()).toMatch(/▾[\s\S]*▴|▴[\s\S]*▾/);
    await accessible();
  });

  it("solves for a cell, tries the answer and proves it with a plot", async () => {
    await page.getByRole("tab", { name: "Solve for" }).click();
    await page.getByLabel("Make").selectOption({ label: "hem" });
    await page.getByLabel("Value").fill("1 3/4 yd");
    await page.getByLabel("by changing").selectOption({ label: "depth" });
    await page.getByRole("button", { name: "Find" }).click();
    const found = page.locator(".found");
    await found.waitFor();
    const depth = /^depth (.+) makes hem/.exec((await found.textContent())!)![1]!;
    const hem = (typed: string) => {
      const engine = new Engine(type(ready, [{ ...lookUp(ready, "depth")!, typed }]), layDesk);
      const value = engine.value(lookUp(ready, "hem")!) as number;
      engine.destroy();
      return value;
    };
    expect(hem(depth)).toBeLessThanOrEqual(63);
    expect(hem(`=${depth}+1/8`)).toBeGreaterThan(63);
    await page.locator(".plots canvas").waitFor();
    await page.getByRole("button", { name: "Preview" }).click();
    await page.getByRole("button", { name: "Keep", exact: true }).waitFor();
    await accessible();
  });

  it("keeps trials in the book, compares them, and adopts one", async () => {
    const slider = page.getByRole("slider", { name: "depth" });
    await slider.focus();
    for (let i = 0; i < 8; i += 1) await page.keyboard.press("ArrowRight");
    await page.getByRole("tab", { name: "Trials" }).click();
    await page.getByLabel("Title of the trial").fill("an inch deeper");
    await page.keyboard.press("Enter");
    const compare = page.getByRole("region", { name: "Trials side by side" });
    await compare.waitFor();
    await expect.poll(() => column("depth", 1)).toBe("10");
    await expect.poll(() => column("hem", 0)).toBe(shownAt("9", "hem"));
    await expect.poll(() => column("hem", 1)).toBe(shownAt("10", "hem"));
    await expect.poll(() => column("cloth_length_a", 1)).toBe(shownAt("10", "cloth_length_a"));
    await page.getByRole("img", { name: /^skirt_piece of as it stands, an inch deeper/ }).waitFor();
    await accessible();
    await page.getByRole("button", { name: "Adopt an inch deeper" }).click();
    await expect
      .poll(() => page.getByRole("button", { name: "Undo" }).getAttribute("title"))
      .toBe("Undo: adopt the trial an inch deeper");
    await page.getByRole("button", { name: "Delete an inch deeper" }).click();
    await page.getByText("No trials yet.").waitFor();
  });

  it("ranks the measurements that a result hangs on", async () => {
    await page.getByRole("tab", { name: "What matters" }).click();
    await page.getByRole("combobox", { name: "Result" }).selectOption({ label: "hem" });
    const bars = page.locator(".bars li");
    await bars.first().waitFor();
    const names = await bars.locator(".bar-name").allInnerTexts();
    expect(names).toContain("depth");
    expect(names.some((name) => name.includes("hip"))).toBe(true);
    await accessible();
  });
});
