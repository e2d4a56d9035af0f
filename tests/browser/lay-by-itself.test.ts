import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { laying, tapeFigure } from "./laying.ts";
import { cell, open } from "./page.ts";

let page: Page;

beforeEach(async () => {
  page = await open({ searching: true });
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
});

const { what, enter, mixed, figure, overlaps } = laying(() => page);
const state = () => page.evaluate(() => document.body.dataset.laySearch);

declare global {
  /** What cells have shown since `noteShown`, by their addresses. */
  var shownTexts: Record<string, string[]>;
}

/** Notes from now on every text that these cells show. */
const noteShown = (addresses: readonly string[]) =>
  page.evaluate((cells) => {
    globalThis.shownTexts = Object.fromEntries(cells.map((address) => [address, []]));
    const textOf = (address: string) =>
      document.querySelector(
        `.ht_master tbody tr:nth-child(${address.slice(1)}) td[aria-colindex="${address.charCodeAt(0) - 63}"]`,
      )?.textContent ?? "";
    new MutationObserver(() => {
      for (const [address, texts] of Object.entries(globalThis.shownTexts))
        if (texts.at(-1) !== textOf(address)) texts.push(textOf(address));
    }).observe(document.body, { childList: true, characterData: true, subtree: true });
  }, addresses);

const noted = (address: string) => page.evaluate((of) => globalThis.shownTexts[of], address);

describe("a length of cloth", () => {
  it("is searched for without a click; what rests on it follows, and the lay drawn is as long as the cell says", async () => {
    await enter("B24", "=B23+1");
    await mixed();
    // 157 in or so laid one by one; two seconds of search come well under 150.
    await expect.poll(() => figure("B23")).toBeLessThan(150);
    await expect.poll(what).toMatch(/Searched for [\d.]+ s; the book keeps the lay\./);
    // The policy of the page allows no WebAssembly, but the workers that search are allowed it.
    const worker = page.workers().find((one) => one.url().includes("/worker-"))!;
    const made = await worker.evaluate(() => {
      const module = new WebAssembly.Module(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0));
      return String(module);
    });
    expect(made).toBe("[object WebAssembly.Module]");
    await page.getByLabel("Search automatically").uncheck();
    await expect.poll(state).toBe("idle");
    await expect.poll(() => cell(page, "B23").getAttribute("data-laid")).toBe("≤");
    await page.locator(".cell-message", { hasText: /^lay searched for [\d.]+ s$/ }).waitFor();
    await cell(page, "B24").click();
    await page.locator(".cell-message", { hasText: /^rests on .*\(Cut!B23\): lay searched for/ }).waitFor();
    await expect.poll(() => figure("B24")).toBeCloseTo((await figure("B23")) + 1, 1);
    expect(tapeFigure(await cell(page, "B23").textContent())).toBe(tapeFigure(await what()));
    await expect.poll(() => overlaps()).toEqual({ copies: 18, both: 0 });
    const drawn = await page.evaluate(() => {
      const box = (path: SVGGraphicsElement) => {
        const { x, width } = path.getBBox();
        return path.getCTM()!.e + x + width;
      };
      const cuts = [...document.querySelectorAll<SVGPathElement>(".lay-table .lay-cut")].map(box);
      const cloth = document.querySelector<SVGRectElement>(".lay-table .lay-cloth")!;
      return { long: Math.max(...cuts) - cloth.getCTM()!.e, wide: cloth.getBBox().height };
    });
    const shown = tapeFigure(await cell(page, "B23").textContent());
    expect(Math.abs((46 * drawn.long) / drawn.wide - shown)).toBeLessThan(1 / 8);
  });

  it("of 300 pieces is worked out beside the typing: the cell says so, other cells go on, and then it follows", async () => {
    await enter("B19", "M 0 0 L 14 3 L 10 12 L 2 9 Z");
    await enter("C19", "300");
    await enter("B21", "=B20/36");
    // The lay may be there soon after the formula: what the cells show is noted, however short it is seen.
    await noteShown(["B20", "B21"]);
    await enter("B20", "=YARDAGE(B19;C19;54)");
    // Laid by the page itself it would never show this.
    await expect.poll(() => noted("B20")).toContain("≥ 566 5/8");
    await expect.poll(() => noted("B21")).toContain("…");
    await enter("B22", "=2+3");
    await expect.poll(() => cell(page, "B22").textContent()).toBe("5");
    await expect.poll(() => figure("B20")).toBeGreaterThan(566);
    await expect.poll(() => cell(page, "B20").getAttribute("data-laid")).toMatch(/≈|≤/);
    await expect.poll(() => cell(page, "B21").textContent()).not.toBe("…");
  });

  // Half a minute of searching: only WHOLE=1 does it. tests/src/app/files/unkept.test.ts holds the rule.
  it.runIf(process.env.WHOLE)(
    "found in one tab makes no second copy of a book that is open in two",
    async () => {
      await cell(page, "B8").click();
      await page.getByLabel("Search automatically").uncheck();
      await expect.poll(state).toBe("idle");
      const second = await page.context().newPage();
      await second.goto(page.url());
      await cell(second, "A1").waitFor();
      await second.getByText("open in another tab too").waitFor();
      await page.bringToFront();
      await enter("B19", "46");
      const toCut = () =>
        second.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
      // The second tab begins with what was typed in the first, once that is kept.
      const typed = async () => {
        await second.reload();
        await toCut();
        return cell(second, "B19").textContent();
      };
      await expect.poll(typed).toBe("46");
      // The first tab goes on searching and keeps what it finds.
      await page.bringToFront();
      await cell(page, "B8").click();
      const searched = () =>
        what().then((text) => Number(/Searched for ([\d.]+) s/.exec(text ?? "")?.[1] ?? 0));
      const before = await searched();
      await page.getByLabel("Search automatically").check();
      await expect.poll(searched).toBeGreaterThan(before);
      await second.bringToFront();
      await cell(second, "B20").click();
      await second.keyboard.type("47");
      await second.keyboard.press("Enter");
      await second.locator(".kept", { hasText: "Saved in this browser" }).waitFor();
      await expect.poll(() => second.getByText("are saved as a separate book").count()).toBe(0);
      await second.reload();
      await expect.poll(() => cell(second, "B20").textContent()).toBe("47");
      await expect.poll(() => cell(second, "B19").textContent()).toBe("46");
      await second.close();
    },
  );
});
