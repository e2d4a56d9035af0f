import type { Page } from "playwright-core";
import { beforeEach, expect, it } from "vitest";
import { cell, openReady } from "./page.ts";

let page: Page;
beforeEach(async () => {
  page = await openReady();
});

const key = (keys: string) => page.keyboard.press(keys);
const write = (text: string) => page.keyboard.type(text);
const chosen = () => page.locator(".formula-place").textContent();
const bar = () => page.getByLabel("Text or formula of the cell");
const telling = () => page.locator("#cell-message").textContent();
const turn = (title: string) =>
  page.getByRole("navigation").getByRole("button", { name: title, exact: true }).click();

it("the chosen cell hears the arrow keys after loading, after turning the page, and after help", async () => {
  await key("ArrowDown");
  await expect.poll(chosen).toBe("A2");
  await turn("Draft");
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe("TD");
  await key("ArrowRight");
  await expect.poll(chosen).toBe("B1");
  await cell(page, "B8").click();
  await key("F1");
  await page.getByRole("dialog").waitFor();
  await key("Escape");
  await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
  await key("ArrowDown");
  await expect.poll(chosen).toBe("B9");
});

it("help read in the middle of a formula leaves the formula as it was, to be gone on with", async () => {
  await turn("Draft");
  await cell(page, "B8").click();
  await write("=SUM(7; 1");
  await key("F1");
  await page.getByRole("dialog").waitFor();
  await key("Escape");
  await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
  await write("2)");
  await key("Enter");
  await expect.poll(() => cell(page, "B8").textContent()).toBe("19");
});

it("an unfinished formula is not put into the book by turning the page; it goes on in the bar, also when its page is shown again", async () => {
  await turn("Draft");
  const before = await cell(page, "B8").textContent();
  for (const leave of ["click", "keys"]) {
    // Another cell first: two clicks on one cell within a second are a double click to the grid.
    await cell(page, "A1").click();
    await cell(page, "B8").click();
    await write("=SUM(7; 12");
    await (leave === "click" ? turn("Fit") : key("Alt+PageDown"));
    await expect.poll(() => page.locator("[aria-current='page']").textContent()).toBe("Fit");
    await expect.poll(chosen).toBe("Draft!B8");
    await expect.poll(() => page.getByRole("button", { name: "Undo" }).isDisabled()).toBe(true);
    await turn("Draft");
    await expect.poll(chosen).toBe("B8");
    await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe("formula-text");
    await expect.poll(() => bar().inputValue()).toBe("=SUM(7; 12");
    if (leave === "keys") await write(")");
    await key(leave === "click" ? "Escape" : "Enter");
    await expect.poll(() => cell(page, "B8").textContent()).toBe(leave === "click" ? before : "19");
  }
});

it("a double click on a page in the list opens the page and deletes none", async () => {
  const titles = () => page.locator("nav .page").allTextContents();
  const before = await titles();
  for (const title of ["Draft", "Cut", "Fit", "Measure", "Trimmings"]) {
    const button = page.getByRole("navigation").getByRole("button", { name: title, exact: true });
    await button.dblclick();
    await expect.poll(() => page.locator("[aria-current='page']").textContent()).toBe(title);
  }
  await expect.poll(() => titles()).toEqual(before);
});

it("after a double click on the fill handle no box follows the mouse", async () => {
  await turn("Draft");
  await cell(page, "B8").click();
  const corner = page.locator(".ht_master .wtBorder.current.corner").first();
  const box = (await corner.boundingBox())!;
  await page.mouse.dblclick(box.x + box.width / 2, box.y + box.height / 2);
  const at = (await cell(page, "C14").boundingBox())!;
  await page.mouse.move(at.x + 20, at.y + 8, { steps: 8 });
  const fill = await page
    .locator(".ht_master .wtBorder.fill")
    .evaluateAll(
      (borders) => borders.filter((border) => (border as HTMLElement).style.display !== "none").length,
    );
  expect(fill).toBe(0);
});

it("the exact figures of a piece are its size, not its path", async () => {
  await turn("Draft");
  // No formula takes anything from this cell.
  await cell(page, "B1").click();
  await write("=RECTANGLE(3 1/3; 4)");
  await key("Enter");
  await page.getByRole("button", { name: "Full precision" }).click();
  await cell(page, "B1").click();
  await expect.poll(telling).toBe("full precision: a piece 3.33333333333 in across the grain, 4 in along it");
});
