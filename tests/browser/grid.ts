/** The grid of the ready book's page Draft, and what the tests of the grid do with it. */
import type { Page } from "playwright-core";
import { beforeEach } from "vitest";
import { cell, openReady } from "./page.ts";

/** The page of the test that runs. */
export let page: Page;

/** Opens the ready book at the grid of Draft before each test of a file. */
export function onDraft(): void {
  beforeEach(async () => {
    page = await openReady();
    await turn("Draft");
  });
}

export const bar = () => page.getByLabel("Text or formula of the cell");
export const key = (keys: string) => page.keyboard.press(keys);
export const type = (text: string) => page.keyboard.type(text);
export const clipboard = () => page.evaluate(() => navigator.clipboard.readText());
export const toClipboard = (text: string) => page.evaluate((put) => navigator.clipboard.writeText(put), text);
export const message = () => page.locator("#cell-message").textContent();

export async function turn(title: string): Promise<void> {
  await page.getByRole("navigation").getByRole("button", { name: title, exact: true }).click();
}

/** The cell that was clicked last. */
let clicked = "";

/** Chooses a cell by a click; where that may be taken for a double click, by a click beside it first. */
export async function choose(address: string, to = address): Promise<void> {
  if (address === clicked) await cell(page, `${address[0]}${address.slice(1) === "1" ? 2 : 1}`).click();
  await cell(page, address).click();
  clicked = to;
  if (to !== address) await cell(page, to).click({ modifiers: ["Shift"] });
}

/** What is typed in a cell, as the bar says. */
export async function typedIn(address: string): Promise<string> {
  await choose(address);
  return bar().inputValue();
}

export async function enter(address: string, text: string): Promise<void> {
  await choose(address);
  await type(text);
  await key("Enter");
}

export const chosen = () => page.locator(".formula-place").textContent();
