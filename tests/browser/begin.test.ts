/** A garment begun on the real page: from its questions to an ordinary book, and into an open one. */
import { expect, it } from "vitest";
import { violations } from "./axe.ts";
import { cell, open } from "./page.ts";

const SHOTS = process.env.SHOTS;

it("a gored skirt is begun by keyboard, its answer drawn as it is typed, and added to an open book once more", async () => {
  const page = await open();
  await page.getByRole("button", { name: "New", exact: true }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: /^Gored skirt/ }).waitFor();
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/choose.png` });
  await dialog.getByRole("button", { name: /^Gored skirt/ }).click();

  // What is needed and missing is said, and the first of it is gone to.
  await dialog.getByRole("button", { name: "Make a new book" }).click();
  await dialog.getByText("Waist girth is still missing: type a length, such as 27").waitFor();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute("aria-invalid")))
    .toBe("true");
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/missing.png` });

  await dialog.getByLabel("Who is it for?").fill("the widow");
  await dialog.getByLabel("Waist girth (needed)").fill("32");
  await page.keyboard.press("Tab");
  await page.keyboard.type("wide");
  await dialog.getByText('Hip girth must be a length, such as 40, not "wide"').waitFor();
  await page.keyboard.press("Control+A");
  await page.keyboard.type("46 1/2");
  await page.keyboard.press("Tab");
  await page.keyboard.type("8 1/2");
  await page.keyboard.press("Tab");
  await page.keyboard.type("39");
  // A waist of 32 in with half an inch of ease, in six gores: 5.4167 in, 5 3/8 on the tape.
  const top = dialog.locator(".begin-figures div").filter({ hasText: "Top of a gore" });
  await expect.poll(() => top.textContent()).toMatch(/5 3\/8/);
  expect(await dialog.locator(".begin-picture .outline").count()).toBe(2);
  expect(await violations(page)).toEqual([]);
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/answered.png` });
  await page.keyboard.press("Enter");

  await expect
    .poll(() => page.getByLabel("Title of the book").inputValue())
    .toBe("Gored skirt for the widow");
  expect(await cell(page, "B4").textContent()).toBe("32");
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
  await expect.poll(() => cell(page, "B10").textContent()).toMatch(/\d/);

  // The same garment for another wearer, in the same book, from example figures.
  await page.getByRole("button", { name: "New", exact: true }).click();
  await dialog.getByRole("button", { name: /^Gored skirt/ }).click();
  await dialog.getByLabel("Who is it for?").fill("the bell-ringer's wife");
  await dialog.getByLabel("Fill what is missing").check();
  await dialog.getByRole("button", { name: "Add to the open book" }).click();
  const second = page
    .getByRole("navigation")
    .getByRole("button", { name: /^Draft, the bell-ringer's wife$/ });
  await second.click();
  await expect.poll(() => cell(page, "B7").textContent()).toMatch(/4 5\/8/);
  await page.keyboard.press("Control+z");
  await expect.poll(() => second.count()).toBe(0);
});

it("the questions fit a phone", async () => {
  const page = await open({ viewport: { width: 390, height: 844 } });
  await page.getByRole("button", { name: "New", exact: true }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: /^Peplum/ }).click();
  await dialog.getByLabel("Waist girth (needed)").fill("70 cm");
  await dialog.locator(".begin-figures").waitFor();
  const { scroll, client } = await dialog.evaluate((one) => ({
    scroll: one.scrollWidth,
    client: one.clientWidth,
  }));
  expect(scroll).toBeLessThanOrEqual(client);
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/narrow.png` });
});
