import { writeFileSync } from "node:fs";
import { expect, it } from "vitest";
import { cell, open } from "./page.ts";
import { accented, ownTexts, PSEUDO, textsInSight, untranslated, withPseudo } from "./pseudo.ts";

it("explore", async () => {
  const page = await open({ prepare: withPseudo });
  await page.locator(".top select:has(option[value=en-XA])").selectOption(PSEUDO);
  await expect.poll(() => page.evaluate(() => document.documentElement.lang)).toBe(PSEUDO);
  await page.locator(".ht_master tbody td").first().waitFor();
  await page.locator("[data-functions=all]").waitFor({ state: "attached" });
  const own = ownTexts();
  const out: string[] = [];
  const note = async (state: string) => {
    for (const one of untranslated(await textsInSight(page), own)) out.push(`${state}: ${one}`);
  };
  const button = (name: string) => page.getByRole("button", { name: accented(name), exact: true }).first();
  const tab = (name: string) => page.getByRole("tab", { name: accented(name), exact: true }).click();
  const dialog = async (
    state: string,
    reach: () => Promise<unknown>,
    wait = "dialog[open]",
    before?: () => Promise<unknown>,
  ) => {
    try {
      await reach();
      await page.locator(wait).first().waitFor({ timeout: 8000 });
      await before?.();
      await note(state);
    } catch (e) {
      out.push(`FAILED ${state} ${String(e).slice(0, 200)}`);
    }
    await page.keyboard.press("Escape");
    await page
      .locator("dialog[open]")
      .waitFor({ state: "detached", timeout: 5000 })
      .catch(() => out.push(`not closed ${state}`));
  };
  const item = (name: string) => async () => {
    await button("Rows and columns").click();
    await page.getByRole("menuitem", { name: new RegExp(accented(name)) }).click();
  };
  await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
  await cell(page, "B3").click();
  await note("grid");
  await page.screenshot({ path: "/tmp/words-tools/pseudo.png" });
  await button("What if").click();
  await page.locator(".slider").waitFor();
  await note("vary");
  for (const one of ["Solve for", "Trials", "What matters"]) {
    await tab(one);
    await page.waitForTimeout(1500);
    await note(one);
  }
  await button("What if").click();
  await cell(page, "A22").click();
  await page.keyboard.type("=SUM(nothere; )");
  await note("typing");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Alt+l");
  await note("problems");
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
  await page.waitForTimeout(500);
  await note("cut");
  await button("Rows and columns").click();
  await note("menu");
  await page.keyboard.press("Escape");
  await dialog("note", () => button("Note").click());
  for (const one of [
    "Heading and kind",
    "Sort",
    "Choices, decimals",
    "Names from labels",
    "Photograph",
    "Find and replace",
  ])
    await dialog(one, item(one));
  await dialog(
    "books",
    () => page.keyboard.press("Control+o"),
    ".book",
    async () => {
      await button("Earlier versions")
        .click()
        .catch(() => {});
      await page.waitForTimeout(300);
    },
  );
  await dialog(
    "new",
    () => page.keyboard.press("Alt+n"),
    "dialog[open] button b",
    async () => {
      await note("new list");
      await page.getByRole("button", { name: /^Gored skirt/ }).click();
      await page.locator(".begin-figures").waitFor();
    },
  );
  await dialog("help", () => page.keyboard.press("F1"), ".help-chapter");
  await dialog(
    "help function",
    () => page.keyboard.press("F1"),
    ".help-chapter",
    async () => {
      await page.locator("#help-question").fill("ruffle");
      await page.locator(".help-text h4").first().waitFor();
    },
  );
  await dialog("print", () => page.keyboard.press("Alt+p"), ".print-paper svg, .print-preview svg");
  await dialog("page menu copy", async () => {
    await page.locator(".page-more, [aria-haspopup=menu]").first().click();
    await note("page menu");
    await page.getByRole("menuitem", { name: accented("Copy for another wearer…") }).click();
  });
  writeFileSync("/tmp/words-tools/found.txt", [...new Set(out)].join("\n"));
});
