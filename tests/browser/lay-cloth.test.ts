import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { violations } from "./axe.ts";
import { laying, tapeFigure } from "./laying.ts";
import { cell, open } from "./page.ts";

let page: Page;

// Each test begins with a page that has found no lay before.
beforeEach(async () => {
  page = await open();
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
});

const { what, button, enter, mixed, figure } = laying(() => page);

describe("cloth in hand", () => {
  it("that falls short is reported with the join that would be enough, and the lay that proves it", async () => {
    // A panel with one knife pleat, 46 in wide: fold at 20, placement line at 26, so that 23 lies beneath.
    await enter("B18", "M 0 0 H 46 V 40 H 0 Z M 20 0 V 40 M 23 0 V 40 M 26 0 V 40");
    await enter("C18", "1");
    await enter("B19", "30");
    await enter("C19", "84");
    await enter("B20", "=CLOTH_CHECK(B18;C18;B19;C19)");
    await cell(page, "B20").click();
    await page.locator(".lay-board").waitFor();
    await expect
      .poll(() => page.locator(".lay-board .look").textContent())
      .toBe("No place for 1 of piece 1.");
    await page.getByLabel("with an allowance of").fill("wide");
    const joins = page.locator(".lay-joins");
    await expect
      .poll(() => joins.getByRole("status").textContent())
      .toBe('an allowance must be a length such as 1/2, not "wide"');
    await page.getByLabel("with an allowance of").fill("3/4");
    await button("Would piecing help?").click();
    await expect
      .poll(() => joins.getByRole("status").textContent())
      .toBe(
        "With a join it fits: cut 1 of piece 1 in two, 23 in from its left border, at the inner fold of a pleat, with 3/4 in on either part.",
      );
    // Each part is 23 in and the allowance wide, and 40 in long; on 30 in cloth they lie behind one another.
    const sizes = await joins.locator(".lay-cut").evaluateAll((paths) =>
      (paths as SVGPathElement[]).map((path) => {
        const { width, height } = path.getBBox();
        return height / width;
      }),
    );
    expect(sizes).toHaveLength(2);
    for (const size of sizes) expect(size).toBeCloseTo(23.75 / 40, 3);
  });

  it("of any shape is drawn with its holes, and no piece lies over them or off it", async () => {
    await enter("B18", "M 0 0 H 26 V 20 H 0 Z");
    await enter("C18", "2");
    await enter("B19", "M 0 0 H 46 V 40 L 30 50 V 70 H 0 Z M 30 6 L 42 6 L 36 22 Z");
    await enter("B21", "=CLOTH_CHECK(B18;C18;B20;C20;FALSE;0;0;;;;;B19)");
    await cell(page, "B21").click();
    await page.locator(".lay-board").waitFor();
    await expect.poll(() => page.locator(".drawing-what").textContent()).toMatch(/ok$/);
    const { over, off } = await page.evaluate(() => {
      const context = document.createElement("canvas").getContext("2d")!;
      const path = (one: Element) => new Path2D(one.getAttribute("d")!);
      const cloth = path(document.querySelector(".lay-cloth")!);
      const hole = path(document.querySelector(".lay-flaw")!);
      let [over, off] = [0, 0];
      for (const one of document.querySelectorAll<SVGPathElement>(".lay-table .lay-cut")) {
        const [, dx = 0, dy = 0] = /translate\((\S+) (\S+)\)/
          .exec(one.parentElement!.getAttribute("transform")!)!
          .map(Number);
        const { x, y, width, height } = one.getBBox();
        // Points inside the piece, 2 px apart and a pixel from its border.
        for (let px = x + 1; px < x + width - 1; px += 2)
          for (let py = y + 1; py < y + height - 1; py += 2) {
            if (!context.isPointInPath(path(one), px, py)) continue;
            if (context.isPointInPath(hole, px + dx, py + dy)) over += 1;
            if (!context.isPointInPath(cloth, px + dx, py + dy)) off += 1;
          }
      }
      return { over, off };
    });
    expect({ over, off }).toEqual({ over: 0, off: 0 });
    await expect
      .poll(() => page.locator(".lay-caption").textContent())
      .toMatch(/^cloth 1, 46 in wide: .* of 70 in used$/);
  });
});

describe("a lay measured", () => {
  it("is as long and as wide along the drawn outlines as its cell says, and covers what it says", async () => {
    await cell(page, "B8").click();
    await page.locator(".lay-board").waitFor();
    // Straight from the drawing: corners of every outline where it lies, in pixels.
    const { outlines, wide } = await page.evaluate(() => ({
      outlines: [...document.querySelectorAll<SVGPathElement>(".lay-table .lay-cut")].map((path) => {
        const [, x, y] = /translate\((\S+) (\S+)\)/.exec(path.parentElement!.getAttribute("transform")!)!;
        const numbers = path
          .getAttribute("d")!
          .match(/-?[\d.]+/g)!
          .map(Number);
        return numbers.flatMap((n, i) => (i % 2 === 0 ? [[n + Number(x), numbers[i + 1]! + Number(y)]] : []));
      }),
      wide: document.querySelector<SVGRectElement>(".lay-table .lay-cloth")!.getBBox().height,
    }));
    const scale = wide / 45;
    const xs = outlines.flat().map(([x]) => x! / scale);
    const ys = outlines.flat().map(([, y]) => y! / scale);
    expect(Math.min(...xs)).toBeGreaterThan(-0.01);
    expect(Math.min(...ys)).toBeGreaterThan(-0.01);
    expect(Math.max(...ys)).toBeLessThan(45.01);
    const text = (await what())!;
    // The cell's figure is to an eighth of an inch; so is what the drawing says in words.
    expect(Math.abs(Math.max(...xs) - tapeFigure(text))).toBeLessThan(1 / 16 + 0.01);
    // Gauss's area formula over the drawn corners, against the share said to be covered.
    const area = outlines.reduce((sum, corners) => {
      const twice = corners.reduce((part, [x, y], i) => {
        const [nx, ny] = corners[(i + 1) % corners.length]!;
        return part + x! * ny! - nx! * y!;
      }, 0);
      return sum + Math.abs(twice) / 2 / scale ** 2;
    }, 0);
    const covered = Number(/([\d.]+) % covered/.exec(text)![1]);
    expect((100 * area) / (45 * Math.max(...xs))).toBeCloseTo(covered, 0);
  });
});

describe("two widths side by side", () => {
  it("are drawn at one scale with their figures in a table", async () => {
    await cell(page, "B8").click();
    await page.getByLabel("Compare with").selectOption({ label: "cloth_length_b" });
    const sizes = await page.evaluate(() =>
      [...document.querySelectorAll<SVGRectElement>(".lay-board .lay-cloth")].map((r) => r.getBBox().height),
    );
    expect(sizes).toHaveLength(2);
    expect(sizes[1]! / sizes[0]!).toBeCloseTo(58 / 45, 3);
    const figures = page.locator(".lay-figures");
    await expect.poll(() => figures.locator("thead").textContent()).toBe("cloth_length_acloth_length_b");
    await expect.poll(() => figures.getByRole("row").nth(1).textContent()).toBe("width of cloth45 in58 in");
    // Abreast, each under its name.
    const [one, other] = await page.locator(".lay-tables > *").evaluateAll((boxes) =>
      boxes.map((box) => {
        const { left, right, top } = box.getBoundingClientRect();
        return { left, right, top };
      }),
    );
    expect(other!.top).toBeCloseTo(one!.top, 0);
    expect(other!.left).toBeGreaterThan(one!.right);
    await expect
      .poll(() => page.locator(".lay-name").allTextContents())
      .toEqual(["cloth_length_a", "cloth_length_b"]);
  });

  it("or one cloth with and without a nap: a one-way lay is never shorter than the best way found either way up", async () => {
    await mixed();
    await page.getByLabel("Compare with").selectOption("the same on a one-way nap");
    const row = (n: number) =>
      page.locator(".lay-figures").getByRole("row").nth(n).locator("td").allTextContents();
    await expect.poll(() => row(2)).toEqual(["either way up", "one way"]);
    const [either, oneWay] = (await row(3)).map(Number.parseFloat);
    expect(either).toBe(await figure("B23"));
    // 157 and 164 in when written; the quick lays differ by more than what the search may shift.
    expect(oneWay).toBeGreaterThan(0.97 * either!);
    // On a one-way nap no grain arrow has two heads: a line and one head are two strokes begun.
    const heads = await page
      .locator(".lay-still .lay-grain")
      .evaluateAll((paths) => paths.map((path) => path.getAttribute("d")!.match(/M/g)!.length));
    expect(new Set(heads)).toEqual(new Set([2]));
  });

  it("axe-core finds nothing, in light and in dark, with a search going on", async () => {
    await cell(page, "B8").click();
    await page.getByLabel("Compare with").selectOption({ label: "cloth_length_b" });
    await page.locator(".lay-search select").selectOption("300");
    await button("Look for a better lay").click();
    await page.getByRole("progressbar").waitFor();
    expect(await violations(page, ".side")).toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    expect(await violations(page, ".side", "colours")).toEqual([]);
    await page.getByRole("progressbar").waitFor();
    await button("Stop here").click();
  });
});
