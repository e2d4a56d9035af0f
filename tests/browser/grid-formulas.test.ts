import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { violations } from "./axe.ts";
import { bar, choose, chosen, enter, key, message, onDraft, page, turn, type, typedIn } from "./grid.ts";
import { cell } from "./page.ts";

onDraft();

describe("formulas", () => {
  const offers = () => page.locator("#offers").getByRole("option").allTextContents();

  it("names are completed by Tab, by Enter only after an arrow key", async () => {
    await choose("B7");
    await type("=wai");
    expect((await offers())[0]).toMatch(/^waist/);
    await key("Tab");
    await type("+wai");
    await key("ArrowDown");
    await key("ArrowDown");
    await key("Enter");
    await type("+hem");
    await expect.poll(() => offers()).not.toHaveLength(0);
    await key("Enter");
    await expect.poll(() => typedIn("B7")).toBe("=waist+waist_seam+hem");
  });

  it("the first Escape puts the offers away, the second leaves the cell", async () => {
    await choose("B7");
    await type("=wai");
    await key("Escape");
    await expect.poll(() => offers()).toEqual([]);
    await expect.poll(() => bar().inputValue()).toBe("=wai");
    await key("Escape");
    await expect.poll(() => bar().inputValue()).toBe("");
  });

  it("the hint of the argument stands beside the cell with its meaning and drawing, and F1 leads to the help and back", async () => {
    const hint = page.locator(".argument-hint");
    const box = async (locator: Locator) => (await locator.boundingBox())!;
    await choose("B7");
    await type("=SPREAD_P");
    await key("Tab");
    await type("10;12;");
    await expect.poll(() => hint.locator("strong").textContent()).toBe("sections");
    await expect.poll(() => hint.textContent()).toContain("whole number, 1 to 200");
    await expect.poll(() => hint.locator("svg.measured").count()).toBe(1);
    for (const edge of [false, true]) {
      // Beside the cell, and beside the cell of a draft in the bar.
      if (edge) await bar().fill("=SPREAD_PER_GAP(10;");
      const [over, head, own] = [
        await box(hint),
        await box(page.locator(".ht_clone_top")),
        await box(cell(page, "B7")),
      ];
      expect(over.y).toBeGreaterThanOrEqual(head.y + head.height);
      expect(over.y >= own.y + own.height || over.y + over.height <= own.y).toBe(true);
      await key("F1");
      await page.getByRole("region", { name: "Help for SPREAD_PER_GAP" }).waitFor();
      await key("Escape");
      await type(edge ? "2" : "3");
      await expect
        .poll(() => bar().inputValue())
        .toBe(edge ? "=SPREAD_PER_GAP(10;2" : "=SPREAD_PER_GAP(10;12;3");
      if (!edge) {
        await key("Escape");
        await bar().click();
      }
    }
    await expect.poll(() => hint.locator("strong").textContent()).toBe("hem");
    await key("Escape");
  });

  it("an unfinished formula goes on in the bar from page to page, takes in their cells, and Enter puts it into its own", async () => {
    await choose("B7");
    await type("=SUM(");
    await turn("Measure");
    await expect.poll(chosen).toBe("Draft!B7");
    await cell(page, "A4").click();
    await type(";");
    await cell(page, "C5").click();
    await type(";1");
    await cell(page, "D9").click();
    await expect.poll(() => bar().inputValue()).toBe("=SUM(Measure!A4;Measure!C5;1");
    await expect
      .poll(() => page.locator(".hint-away").textContent())
      .toContain("belongs to The hem (Draft!B7)");
    await type(")");
    await key("Enter");
    await expect.poll(chosen).toBe("B8");
    await expect.poll(() => typedIn("B7")).toBe("=SUM(Measure!A4;Measure!C5;1)");

    await choose("C9");
    await type("=SUM(B2");
    await cell(page, "B20").click();
    await key("Escape");
    await expect.poll(chosen).toBe("C9");
    await expect.poll(() => bar().inputValue()).toBe("");

    // Typing into another cell leaves the formula at its own, and a step that moves cells puts it in first.
    await type("=SUM(B2");
    await cell(page, "B20").click();
    await cell(page, "B21").dblclick();
    await type("5");
    await key("Enter");
    await expect.poll(() => typedIn("C9")).toBe("=SUM(B2");
    await expect.poll(() => message()).toContain("is not in the book yet");
    await key("F2");
    await type(";B3");
    await turn("Measure");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("button", { name: "Redo" }).click();
    await turn("Draft");
    await expect.poll(() => typedIn("C9")).toBe("=SUM(B2;B3");
  });

  it("a cell pointed at comes into the formula by its name, a block by its corners", async () => {
    await choose("B7");
    await type("=");
    await cell(page, "B9").click();
    await cell(page, "B8").click();
    await type("+SUM(");
    await cell(page, "B2").hover();
    await page.mouse.down();
    await cell(page, "B4").hover();
    await page.mouse.up();
    await type(")");
    await key("Enter");
    await expect.poll(() => typedIn("B7")).toBe("=depth+SUM(B2:B4)");
  });
});

describe("a named list", () => {
  it("is lengthened by one press when a number is typed directly beneath it", async () => {
    await turn("Fit");
    await enter("E12", "3");
    await enter("E13", "4");
    await choose("E12", "E13");
    await page.getByLabel("Name of the cell").or(page.getByLabel("Name of the list")).first().fill("bones");
    await key("Enter");
    await enter("E17", "=SUM(bones)");
    await enter("E14", "5");
    await expect.poll(() => cell(page, "E17").textContent()).toContain("7");
    await choose("E14");
    await page.getByRole("button", { name: "Lengthen bones to row 14" }).click();
    await expect.poll(() => cell(page, "E17").textContent()).toContain("12");
    await key("Control+z");
    await expect.poll(() => cell(page, "E17").textContent()).toContain("7");
  });
});

describe("for everyone", () => {
  it("nothing stands against use by everyone, in light and in dark", async () => {
    const nothingFound = async () => {
      expect(await violations(page, ".middle")).toEqual([]);
      await page.emulateMedia({ colorScheme: "dark" });
      expect(await violations(page, ".middle", "colours")).toEqual([]);
      await page.emulateMedia({ colorScheme: "light" });
    };
    await enter("B13", "2.5");
    await choose("B7");
    await type("=SPREAD_PER_GAP(wai");
    await nothingFound();
    await key("Escape");
    await key("Escape");
    await key("Shift+F10");
    await nothingFound();
  });

  it("the keyboard comes into the grid and out of it again", async () => {
    await page.getByLabel("Text or formula of the cell").focus();
    const inGrid = () => page.evaluate(() => document.activeElement?.closest(".ht_master") !== null);
    for (let tabs = 0; tabs < 5 && !(await inGrid()); tabs += 1) await key("Tab");
    await expect.poll(() => inGrid()).toBe(true);
    await choose("A1");
    await key("Shift+Tab");
    await expect.poll(() => inGrid()).toBe(false);
  });
});
