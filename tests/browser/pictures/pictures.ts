/** The pictures of the README, taken of the page as it is today. */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { it } from "vitest";
import { cell, open } from "../page.ts";

const picture = (file: string): string => join(import.meta.dirname, `${file}.png`);

/** Turns to a page and selects a cell of it by the keyboard, wherever it is. */
async function select(page: Page, title: string, address: string): Promise<void> {
  await page.getByRole("navigation").getByRole("button", { name: title, exact: true }).click();
  await cell(page, "A1").click();
  for (let row = 1; row < Number(address.slice(1)); row += 1) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowRight");
  await page.waitForTimeout(500);
}

const LOOKS = [
  { file: "wide", title: "Draft", at: "B32", viewport: { width: 1280, height: 800 }, colorScheme: "light" },
  { file: "dark", title: "Draft", at: "B15", viewport: { width: 1280, height: 800 }, colorScheme: "dark" },
  { file: "narrow", title: "Draft", at: "B4", viewport: { width: 390, height: 844 }, colorScheme: "light" },
] as const;

for (const { file, title, at, viewport, colorScheme } of LOOKS)
  it(`${file}: ${title}, ${at}`, async () => {
    const page = await open({ viewport, colorScheme });
    await select(page, title, at);
    await page.screenshot({ path: picture(file) });
  });

it("cloth: a lay that was searched for", async () => {
  const page = await open({ viewport: { width: 860, height: 800 }, colorScheme: "light" });
  await select(page, "Cut", "B8");
  await page.getByRole("button", { name: "Fill the window with Drawing" }).click();
  await page.getByRole("button", { name: "Look for a better lay" }).click();
  await page.getByText("The book keeps it").waitFor();
  await page.waitForTimeout(800);
  await page.screenshot({ path: picture("cloth") });
});

it("worn: the skirt as worn", async () => {
  const page = await open({ viewport: { width: 1280, height: 800 }, colorScheme: "light" });
  await select(page, "Draft", "B31");
  await page.getByRole("radio", { name: "As worn" }).check({ force: true });
  await page.getByRole("button", { name: "Fill the window" }).first().click();
  await page.waitForTimeout(800);
  await page.screenshot({ path: picture("worn") });
});

it("begin: a garment from its questions", async () => {
  const page = await open({ viewport: { width: 1280, height: 800 }, colorScheme: "light" });
  await page.getByRole("button", { name: "New", exact: true }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: /^Gored skirt/ }).click();
  await dialog.getByLabel("Who is it for?").fill("the widow");
  await dialog.getByLabel("Hip girth (needed)").fill("46 1/2");
  await dialog.getByLabel("Waist girth (needed)").fill("32");
  await page.waitForTimeout(800);
  await page.screenshot({ path: picture("begin") });
});

it("paper: the pattern on sheets of paper", async () => {
  const page = await open({ viewport: { width: 1280, height: 800 }, colorScheme: "light" });
  await page.getByRole("button", { name: "Print", exact: true }).click();
  const dialog = page.getByRole("dialog", { name: "Print" });
  await dialog
    .getByRole("status")
    .getByText(/^\d+ sheets of Letter/)
    .waitFor();
  await page.waitForTimeout(800);
  await page.screenshot({ path: picture("paper") });
});

it("cast: the chart of a whole company", async () => {
  const page = await open({ viewport: { width: 1280, height: 800 }, colorScheme: "light" });
  await page.getByRole("button", { name: "Books", exact: true }).click();
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /the whole cast/ })
    .click();
  await page.waitForTimeout(3000);
  await select(page, "Measure", "B3");
  await page.waitForTimeout(1500);
  await page.screenshot({ path: picture("cast") });
});
