/** What the tests of keeping ask of the page. */
import type { Page } from "playwright-core";
import { cell } from "./page.ts";

/** Whether everything is saved, as the page says. */
export const state = (page: Page) => page.locator(".kept").textContent();

/** Types into a cell of the page in sight. */
export async function type(page: Page, address: string, text: string): Promise<void> {
  await cell(page, address).click();
  await page.keyboard.press("Escape");
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}
