/** The pictures of the README, taken of the page as it is today. */
import { join } from "node:path";
import { it } from "vitest";
import { cell, open } from "../page.ts";

const LOOKS = [
  { file: "wide", page: "Draft", at: "B32", viewport: { width: 1280, height: 800 }, colorScheme: "light" },
  { file: "cloth", page: "Cut", at: "B8", viewport: { width: 1280, height: 800 }, colorScheme: "light" },
  { file: "dark", page: "Draft", at: "B15", viewport: { width: 1280, height: 800 }, colorScheme: "dark" },
  { file: "narrow", page: "Draft", at: "B4", viewport: { width: 390, height: 844 }, colorScheme: "light" },
] as const;

for (const { file, page: title, at, viewport, colorScheme } of LOOKS) {
  it(`${file}: ${title}, ${at}`, async () => {
    const page = await open({ viewport, colorScheme });
    await page.getByRole("button", { name: title, exact: true }).click();
    await cell(page, "A1").click();
    for (let row = 1; row < Number(at.slice(1)); row += 1) await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowRight");
    await page.waitForTimeout(500);
    await page.screenshot({ path: join(import.meta.dirname, `${file}.png`) });
  });
}
