/** A garment begun on the real page: from its questions to an ordinary book, and into an open one. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { readGarment } from "../../src/book/garment.ts";
import { violations } from "./axe.ts";
import { cell, open, openReady } from "./page.ts";

const SHOTS = process.env.SHOTS;

it("a gored skirt is begun by keyboard, its answer drawn as it is typed, and added to an open book once more", async () => {
  const page = await openReady();
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
  await expect.poll(() => dialog.locator(".begin-picture .outline").count()).toBe(2);
  expect(await violations(page)).toEqual([]);
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/answered.png` });
  await page.keyboard.press("Enter");

  await expect
    .poll(() => page.getByLabel("Title of the book").inputValue())
    .toBe("Gored skirt for the widow");
  await expect.poll(() => cell(page, "B4").textContent()).toBe("32");
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

it("no text or heading that a garment begins with is cut off by its column", async () => {
  const folder = new URL("../../templates/garments/", import.meta.url);
  const texts = readdirSync(folder).flatMap((file) => {
    const reading = readGarment(readFileSync(new URL(file, folder), "utf8"));
    if ("reason" in reading) throw new Error(reading.reason);
    return Object.values(reading.garment.books).flatMap(({ pages }) =>
      pages.flatMap(({ title, columns, rows }) => {
        const where = `${file}, ${title}`;
        const heads = columns.map(({ heading, width }) => ({
          where,
          typed: heading,
          width,
          isHeading: true,
        }));
        const typed = rows.flatMap((cells) =>
          cells.map((typed, at) => ({ where, typed, width: columns[at]!.width, isHeading: false })),
        );
        return [...heads, ...typed.filter((one) => /^[^=]*\p{L}{2}/u.test(one.typed))];
      }),
    );
  });
  expect(texts.length).toBeGreaterThan(500);
  const page = await openReady();
  const cut = await page.evaluate((all) => {
    const [cells, heads] = [".ht_master td.cell", ".column-heading"].map((one) => {
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(document.querySelector(one)!);
      return `${fontWeight} ${fontSize} ${fontFamily}`;
    });
    const context = document.createElement("canvas").getContext("2d")!;
    return all.filter(({ typed, width, isHeading }) => {
      context.font = isHeading ? heads! : cells!;
      // A cell has 6 px on either side of its text, a heading 3 px and a line.
      return context.measureText(typed).width + (isHeading ? 7 : 12) > width;
    });
  }, texts);
  expect(cut).toEqual([]);
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

it("a company of a play: a doubtful figure is marked in the chart, gone to from the problems, and a draft is copied for another wearer", async () => {
  const page = await openReady();
  await page.getByRole("button", { name: "New", exact: true }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: /^Company of a play/ }).click();
  await dialog.getByLabel("Fill what is missing").check();
  await dialog.getByRole("button", { name: "Make a new book" }).click();
  await page.getByRole("button", { name: "No problems" }).waitFor();
  // The cook's waist in centimetres.
  await cell(page, "B7").click();
  for (let i = 0; i < 6; i += 1) await page.keyboard.press("ArrowRight");
  await page.keyboard.type("91");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "1 problem" }).click();
  const problems = page.locator("#checks");
  await problems.getByText(/^doubtful: the cook over shift: waist girth of 91 in is/).waitFor();
  expect(await violations(page, "#checks")).toEqual([]);
  await problems.getByRole("button", { name: "Go to Measure!H7" }).first().click();
  await page
    .locator("#cell-message")
    .getByText(/measure again, and check the unit \(says Measure!A7\)/)
    .waitFor();
  const doubted = await cell(page, "H7").evaluate((td) => [
    td.className.includes("cell-doubted"),
    getComputedStyle(td, "::before").content.slice(0, 3),
    td.getAttribute("aria-description")?.slice(0, 27),
  ]);
  expect(doubted).toEqual([true, '"?"', "check: the cook over shift:"]);
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/company.png` });
  await page.keyboard.press("Control+z");
  await page.getByRole("button", { name: "No problems" }).waitFor();
  await expect.poll(() => cell(page, "H7").getAttribute("class")).not.toContain("cell-doubted");

  await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
  await page.locator("[aria-current='page']").focus();
  await page.keyboard.press("Shift+F10");
  for (const key of ["ArrowDown", "ArrowDown", "Enter"]) await page.keyboard.press(key);
  // Each wearer of the chart once, though most have two rows there.
  const offered = dialog.locator("datalist option");
  await expect.poll(() => offered.evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value))).toEqual([
    "the miller's daughter", "the widow", "the cook", "the goose girl", "the squire's wife", "the bell-ringer's aunt",
  ]); // biome-ignore format: a list
  await dialog.getByLabel("Wearer's name").fill("the cook");
  await page.keyboard.press("Enter");
  // Lengths that are typed on the page are hers only if nobody types over them.
  await page
    .getByText(
      /^The page Draft, the cook is a copy of Draft, drawn for the cook\. 4 lengths are typed on the page and are copied as they stand \(Waist down to hip, .*: type over what is the first wearer's/,
    )
    .waitFor();
  await expect.poll(() => cell(page, "B1").textContent()).toBe("the cook");
  await expect.poll(() => cell(page, "B3").textContent()).toBe("34 1/2");

  // A choice that is longer than its column leaves its row as tall as the others.
  await page.getByRole("navigation").getByRole("button", { name: "Garments", exact: true }).click();
  await cell(page, "A2").click();
  await page.keyboard.type("the goose girl's godmother and her neighbour");
  await page.keyboard.press("Enter");
  await expect.poll(() => cell(page, "A2").textContent()).toMatch(/^the goose girl's godmother/);
  const [tall, usual] = await Promise.all(["A2", "A3"].map((one) => cell(page, one).boundingBox()));
  expect(tall!.height).toBe(usual!.height);
});
