import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { laying, tapeFigure } from "./laying.ts";
import { cell, expectComplaints, open } from "./page.ts";

let page: Page;

// Each test begins with a page that has found no lay before.
beforeEach(async () => {
  page = await open();
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
});

const { what, state, place, button, table, enter, gores, mixed, figure, overlaps } = laying(() => page);

/** The next search goes on for a minute, so that it does not end before the test stops it. */
const longSearch = () => page.locator(".lay-search select").selectOption("60");

describe("the lay of a cut list", () => {
  it("is drawn to scale with every copy once, none over another", async () => {
    await cell(page, "B8").click();
    await page.locator(".lay-board").waitFor();
    // 2 skirt halves, 2 facings, 1 waistband, 4 cuffs.
    await expect.poll(() => overlaps()).toEqual({ copies: 9, both: 0 });
    await expect.poll(() => what()).toMatch(/of cloth 45 in wide.*A quick lay, made at once/);
    const size = await page.evaluate(() => {
      const cloth = document.querySelector<SVGRectElement>(".lay-table .lay-cloth")!.getBBox();
      return cloth.width / cloth.height;
    });
    expect(size).toBeCloseTo(tapeFigure(await what()) / 45, 2);
  });

  it("is looked for in workers; a better one is in the cell, in what rests on it, and there after reopening", async () => {
    await mixed();
    await enter("B24", "=B23+1");
    await cell(page, "B23").click();
    const before = await figure("B23");
    await longSearch();
    await button("Look for a better lay").click();
    await page.getByRole("progressbar").waitFor();
    await expect.poll(() => figure("B23")).toBeLessThan(before - 1);
    await button("Stop here").click();
    await expect.poll(state).toMatch(/^Found .* where .* was needed\. The book keeps it\.$/);
    await expect.poll(() => what()).toContain("the book keeps the lay.");
    const found = await figure("B23");
    await expect.poll(() => figure("B24")).toBeCloseTo(found + 1, 1);
    await expect.poll(() => overlaps()).toEqual({ copies: 18, both: 0 });
    await page.locator(".kept", { hasText: "Saved in this browser" }).waitFor();
    await page.reload();
    await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
    await cell(page, "B23").click();
    await expect.poll(what).toMatch(/(Searched for|Found by a search).*the book keeps the lay/);
    await expect.poll(() => figure("B23")).toBe(found);
    // Wider cloth is another question, and the lay found before is one of its lays.
    await enter("B22", "47");
    await cell(page, "B23").click();
    await expect.poll(what).toMatch(/Searched for .*, for a larger job that this one fits into/);
    await expect.poll(() => figure("B23")).toBeLessThanOrEqual(found);
    // Narrower cloth has a quick lay again.
    await enter("B22", "45");
    await cell(page, "B23").click();
    await expect.poll(what).toMatch(/quick lay/);
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await expect.poll(what).toMatch(/(Searched for|Found by a search).*the book keeps the lay/);
  });

  it("ends by itself when the lay is good enough, and says a wrong length in a sentence", async () => {
    await mixed();
    const enough = page.getByLabel("Good enough: stop at this length");
    // An example that makes sense: a little less than the lay takes.
    expect(await enough.getAttribute("placeholder")).toBe("such as 144 7/8");
    await enough.fill("soon");
    await expect.poll(state).toContain('good enough must be a length such as 2 yd or 144 7/8, not "soon"');
    await enough.fill(String((await figure("B23")) - 0.5));
    await button("Look for a better lay").click();
    await expect.poll(state).toContain("That is good enough.");
  });

  it("a search whose workers can not be read says so and leaves the lay as it was", async () => {
    expectComplaints(/worker|Failed to load/i);
    await mixed();
    const before = await figure("B23");
    await page.evaluate(() => {
      const Real = window.Worker;
      window.Worker = class extends Real {
        constructor() {
          super(URL.createObjectURL(new Blob(["throw new Error('no room')"], { type: "text/javascript" })));
        }
      } as typeof Worker;
    });
    await button("Look for a better lay").click();
    await expect
      .poll(() => page.locator(".lay-board .look").textContent())
      .toMatch(/^a search worker stopped: .*no room.*; the best lay so far is kept$/);
    await expect.poll(() => figure("B23")).toBe(before);
    await page.evaluate(() => {
      window.Worker = Object.getPrototypeOf(window.Worker);
    });
  });
});

describe("laying by hand", () => {
  it("a piece dragged onto another goes to the nearest free place; Escape leaves it where it was", async () => {
    await gores();
    const piece = page.locator('.lay-table [data-copy="0 0"]');
    // The last row holds one gore of the seven: beside it is room.
    const other = page.locator('.lay-table [data-copy="0 6"]');
    const before = await piece.getAttribute("transform");
    const from = (await piece.boundingBox())!;
    const to = (await other.boundingBox())!;
    const middle = (box: typeof from) => [box.x + box.width / 2, box.y + box.height / 2] as const;
    await page.mouse.move(...middle(from));
    await page.mouse.down();
    await page.mouse.move(...middle(to), { steps: 5 });
    await expect.poll(() => overlaps()).toEqual({ copies: 7, both: 0 });
    await page.locator(".lay-wish").waitFor({ state: "attached" });
    await page.mouse.up();
    await expect.poll(() => piece.getAttribute("transform")).not.toBe(before);
    await expect.poll(() => overlaps()).toEqual({ copies: 7, both: 0 });
    await expect.poll(() => what()).toContain("Your own arrangement; the book does not keep it yet.");
    await button("Back to the book's lay").click();
    await expect.poll(() => piece.getAttribute("transform")).toBe(before);
    await page.mouse.move(...middle(from));
    await page.mouse.down();
    await page.mouse.move(...middle(to));
    await table().press("Escape");
    await page.mouse.up();
    await expect.poll(() => piece.getAttribute("transform")).toBe(before);
  });

  it("a finger scrolls the page over the pieces; it drags the one that was tapped, in any direction", async () => {
    page = await open({ viewport: { width: 768, height: 1900 }, hasTouch: true, isMobile: true });
    await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
    await gores();
    const session = await page.context().newCDPSession(page);
    const touch = (type: "touchStart" | "touchMove" | "touchEnd", points: { x: number; y: number }[]) =>
      session.send("Input.dispatchTouchEvent", { type, touchPoints: points });
    const piece = page.locator('.lay-table [data-copy="0 6"]');
    const drag = async (dy: number) => {
      const box = (await piece.boundingBox())!;
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await touch("touchStart", [{ x, y }]);
      for (let i = 1; i <= 8; i += 1) await touch("touchMove", [{ x, y: y + (dy * i) / 8 }]);
      await touch("touchEnd", []);
    };
    const scrolled = () => page.evaluate(() => document.scrollingElement!.scrollTop);
    const chosen = page.getByRole("combobox", { name: "Piece", exact: true });
    await table().evaluate((all) => all.scrollIntoView({ block: "center" }));
    const [start, before] = [await scrolled(), await piece.getAttribute("transform")];
    await drag(-60);
    await expect.poll(scrolled).toBeGreaterThan(start + 30);
    expect(await chosen.inputValue()).toBe("");
    await piece.tap();
    await expect.poll(() => chosen.inputValue()).toBe("0 6");
    const at = await scrolled();
    await drag(60);
    await expect.poll(() => piece.getAttribute("transform")).not.toBe(before);
    expect(await scrolled()).toBe(at);
    await expect.poll(() => overlaps()).toEqual({ copies: 7, both: 0 });
  });

  it("is done by keys alone: chosen, moved, pinned, and the rest looked for; the lay is kept when asked for", async () => {
    await gores();
    const book = await figure("B21");
    await table().focus();
    await page.keyboard.press("PageDown");
    await expect
      .poll(() => place())
      .toMatch(/^piece 1 \d begins 0 in along the cloth, 0 in from the selvedge/);
    await page.keyboard.press("Shift+ArrowRight");
    await expect.poll(() => place()).not.toContain("begins 0 in along");
    await page.keyboard.press("p");
    const pinned = await place();
    expect(pinned).toContain("It is pinned.");
    await expect.poll(() => overlaps()).toEqual({ copies: 7, both: 0 });
    await longSearch();
    await button("Look for a better lay of the rest").click();
    const searched = () => page.locator("progress").evaluate((bar) => (bar as HTMLProgressElement).value);
    await expect.poll(searched).toBeGreaterThan(0.03);
    await button("Stop here").click();
    // The pinned piece has not moved, whatever was found about it.
    await expect.poll(() => place()).toBe(pinned);
    await expect.poll(() => overlaps()).toEqual({ copies: 7, both: 0 });
    const text = await what();
    if (text?.includes("Your own arrangement")) {
      const own = tapeFigure(text);
      await button("Keep this lay").click();
      await expect.poll(() => figure("B21")).toBeCloseTo(own, 1);
      await expect.poll(() => what()).toContain("Laid by hand; the book keeps the lay.");
    } else await expect.poll(() => figure("B21")).toBeLessThan(book);
  });
});

describe("pinned pieces", () => {
  it("stay where they lie while a better lay of the rest is found about them, and the book keeps it", async () => {
    await mixed();
    const before = await figure("B23");
    // A gore and a pentagon are pinned where the quick lay has them, wherever that is.
    for (const [key, name] of [
      ["0 1", "piece 1 2"],
      ["1 3", "piece 2 4"],
    ] as const) {
      await page.getByRole("combobox", { name: "Piece", exact: true }).selectOption(key);
      await button("Pin").click();
      await expect.poll(() => place()).toMatch(new RegExp(`^${name} begins .* It is pinned\\.$`));
    }
    const places = await page.evaluate(() =>
      [...document.querySelectorAll(".lay-table [data-copy]")].map((one) => one.getAttribute("transform")),
    );
    const pinned = [await place()];
    await page.getByRole("combobox", { name: "Piece", exact: true }).selectOption("0 1");
    pinned.push(await place());
    await longSearch();
    await button("Look for a better lay of the rest").click();
    await expect.poll(() => figure("B23")).toBeLessThan(before - 1);
    await button("Stop here").click();
    await expect.poll(() => place()).toBe(pinned[1]);
    await page.getByRole("combobox", { name: "Piece", exact: true }).selectOption("1 3");
    await expect.poll(() => place()).toBe(pinned[0]);
    await expect.poll(() => overlaps()).toEqual({ copies: 18, both: 0 });
    await expect.poll(() => what()).toContain("the book keeps the lay.");
    const after = await page.evaluate(() =>
      [...document.querySelectorAll(".lay-table [data-copy]")].map((one) => one.getAttribute("transform")),
    );
    expect(after).not.toEqual(places);
  });
});
