import { describe, expect, it } from "vitest";
import { bar, choose, chosen, enter, key, message, onDraft, page, turn, type, typedIn } from "./grid.ts";
import { cell } from "./page.ts";

onDraft();

describe("rows and columns", () => {
  it("a right click puts a row in above, and formulas and names follow", async () => {
    await cell(page, "B13").click({ button: "right" });
    await page.getByRole("menuitem", { name: "Insert row above" }).click();
    await expect.poll(() => typedIn("B14")).toBe("5");
    await expect.poll(() => page.getByLabel("Name of the cell").inputValue()).toBe("sections");
    await expect.poll(() => cell(page, "B16").textContent()).toBe("2 3/8");
    await key("Control+z");
    await expect.poll(() => typedIn("B13")).toBe("5");
  });

  it("Shift+F10 takes rows out, and the keyboard is back in the grid", async () => {
    await choose("B13", "B14");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Delete 2 rows" }).focus();
    await key("Enter");
    await expect.poll(() => cell(page, "A13").textContent()).toBe("Opening at each slash");
    await key("ArrowDown");
    await expect.poll(() => chosen()).toBe("B14");
  });

  it("the button gives a column another heading and kind", async () => {
    await choose("B8");
    await page.getByRole("button", { name: "Rows and columns" }).click();
    await page.getByRole("menuitem", { name: "Heading and kind of column B…" }).click();
    await page.getByLabel("Heading").fill("Inches <i>");
    await page.getByLabel("Width on screen, in pixels").fill("200");
    await key("Enter");
    const heads = () => page.locator(".ht_clone_top .column-heading").allTextContents();
    await expect.poll(heads).toContain("Inches <i>");
    expect((await cell(page, "B8").boundingBox())!.width).toBe(200);
    await key("Control+z");
    await expect.poll(heads).toContain("Value");
    expect((await cell(page, "B8").boundingBox())!.width).toBe(150);
  });

  it("a column drawn wider is a step that undo takes back", async () => {
    const head = (await page.locator(".ht_clone_top th").nth(2).boundingBox())!;
    await page.mouse.move(head.x + head.width - 3, head.y + 10);
    await page.mouse.down();
    await page.mouse.move(head.x + head.width + 57, head.y + 10, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => (await cell(page, "B8").boundingBox())!.width).toBe(210);
    await choose("B8");
    await key("Control+z");
    expect((await cell(page, "B8").boundingBox())!.width).toBe(150);
  });

  it("rows are moved by keys and by their heads, hidden with a mark, and shown again", async () => {
    await choose("B4");
    await key("Alt+Shift+ArrowDown");
    await expect.poll(() => chosen()).toBe("B5");
    await expect.poll(() => typedIn("B5")).toMatch(/^=SEAM_GIRTH/);
    await key("Control+z");
    const head = async (row: number) =>
      (await page
        .locator(".ht_clone_inline_start tbody th")
        .nth(row - 1)
        .boundingBox())!;
    const [from, to] = [await head(13), await head(16)];
    await page.mouse.click(from.x + 20, from.y + 13);
    await page.mouse.move(from.x + 20, from.y + 13);
    await page.mouse.down();
    await page.mouse.move(to.x + 20, to.y + 22, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => typedIn("B16")).toBe("5");
    await expect.poll(() => page.getByLabel("Name of the cell").inputValue()).toBe("sections");
    await key("Control+z");
    await choose("B8", "B9");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Hide 2 rows" }).click();
    const line = page.locator(".grid-hidden");
    await expect.poll(() => line.textContent()).toContain("Rows 8 to 9 are hidden; they count all the same.");
    await expect.poll(chosen).toBe("B10");
    await key("ArrowUp");
    await expect.poll(() => chosen()).toBe("B7");
    await line.getByRole("button").click();
    await expect.poll(() => line.count()).toBe(0);
  });

  it("a block is sorted by a column, and one whose formulas use its other rows says why not", async () => {
    await page.getByRole("button", { name: "Add a page to Cut" }).click();
    await key("Escape");
    await choose("A1");
    for (const text of ["skirt", "2", "band", "1", "cuff", "4"]) {
      await type(text);
      await key(/\d/.test(text) ? "Enter" : "Tab");
    }
    await choose("B2");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Sort…" }).click();
    await page.getByLabel("Order").selectOption("true");
    await page.getByRole("button", { name: "Sort" }).click();
    await expect.poll(() => cell(page, "A1").textContent()).toBe("cuff");
    await expect.poll(() => cell(page, "B3").textContent()).toBe("1");
    await enter("C2", "=B1+B2");
    await choose("B2");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Sort…" }).click();
    await page.getByRole("button", { name: "Sort" }).click();
    await expect
      .poll(() => page.getByRole("dialog").getByRole("alert").textContent())
      .toMatch(/C2 uses B1, another row of this block/);
  });

  it("a cell with choices offers them, and another value is kept and listed among the problems", async () => {
    await choose("B20");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Choices, decimals, unit and fittings…" }).click();
    await page.getByLabel("Chosen from").fill("1; 2; 3");
    await page.getByRole("button", { name: "Keep" }).click();
    await choose("B20");
    await key("Alt+ArrowDown");
    await expect
      .poll(() => page.getByRole("listbox", { name: "Choices" }).getByRole("option").count())
      .toBe(3);
    for (const step of ["ArrowDown", "Enter", "Enter"]) await key(step);
    await expect.poll(() => typedIn("B20")).toBe("1");
    await enter("B20", "4");
    await expect.poll(() => cell(page, "B20").textContent()).toBe("4");
    await choose("B20");
    await expect.poll(() => message()).toContain('"4" is not among the choices 1, 2, 3');
    const looks = await page.evaluate(() => {
      const style = (text: string) => {
        const td = [...document.querySelectorAll(".ht_master td")].find((one) => one.textContent === text)!;
        return getComputedStyle(td).backgroundColor;
      };
      return [style("9"), style("54 1/4"), document.querySelectorAll(".ht_master td svg.cell-piece").length];
    });
    expect(looks[0]).not.toBe(looks[1]);
  });

  it("a photograph dropped on a cell is made small and kept with its words; a file too large or no picture is refused", async () => {
    const tall = await cell(page, "C20").evaluate((td) => td.getBoundingClientRect().height);
    const drop = (size: number) =>
      cell(page, "C20").evaluate((td, bytes) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([new Uint8Array(bytes)], "linen.jpg", { type: "image/jpeg" }));
        td.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
      }, size);
    await drop(50_000_000);
    const form = page.getByRole("dialog", { name: "Photograph in C20" });
    const says = form.getByRole("alert");
    await expect
      .poll(() => says.textContent())
      .toMatch(/^linen.jpg has 50 MB, and a photograph may have at most 25 MB/);
    const buffer = Buffer.from("<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>");
    await form.getByLabel("Picture").setInputFiles({ name: "a.png", mimeType: "image/png", buffer });
    await expect.poll(() => says.textContent()).toMatch(/^a.png is no photograph/);
    const drawn = await page.evaluate(() => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [1000, 600];
      const pen = canvas.getContext("2d")!;
      for (let i = 0; i < 3000; i++) {
        pen.fillStyle = `hsl(${(i * 47) % 360} 60% 50%)`;
        pen.fillRect((i * 37) % 1000, (i * 91) % 600, 30, 20);
      }
      return canvas.toDataURL("image/png").split(",")[1]!;
    });
    const png = { name: "linen.png", mimeType: "image/png", buffer: Buffer.from(drawn, "base64") };
    await form.getByLabel("Picture").setInputFiles(png);
    await form.getByRole("img").waitFor();
    await form.getByLabel("What it shows").fill("blue linen");
    await form.getByRole("button", { name: "Keep" }).click();
    await form.waitFor({ state: "hidden" });
    const picture = await cell(page, "C20").evaluate((td) => {
      const { src, naturalWidth, naturalHeight } = td.querySelector("img")!;
      const { height } = td.getBoundingClientRect();
      return { kind: src.slice(0, 23), length: src.length, naturalWidth, naturalHeight, height };
    });
    expect(picture).toMatchObject({ kind: "data:image/jpeg;base64,", naturalWidth: 320, naturalHeight: 192 });
    expect(picture.length).toBeLessThan(54_000);
    expect(picture.height).toBe(tall);
    await expect
      .poll(() => cell(page, "C20").getAttribute("aria-description"))
      .toContain("photograph: blue linen");
    await choose("B19");
    await choose("C20");
    await page.locator("#cell-message").getByRole("img", { name: "blue linen" }).waitFor();
    await key("Control+z");
    await expect.poll(() => cell(page, "C20").locator("img").count()).toBe(0);
  });

  it("a measurement follows the fittings: what is typed stays, and the cell says what was fitted", async () => {
    await choose("B2");
    await expect.poll(() => message()).toContain("worked out as 27, fitted −1/4 (bodice waist): 26 3/4");
    await expect.poll(() => bar().inputValue()).toBe("=waist");
    await choose("B8");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Choices, decimals, unit and fittings…" }).click();
    await page.getByLabel("Fitting changes of").fill("bodice shouldr");
    await page.getByRole("button", { name: "Keep" }).click();
    await choose("B8");
    await expect.poll(() => message()).toContain('knows "bodice shouldr"; is "bodice shoulder" meant?');
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Choices, decimals, unit and fittings…" }).click();
    await page.getByLabel("Fitting changes of").fill("bodice shoulder");
    await page.getByRole("button", { name: "Keep" }).click();
    await choose("B8");
    await expect.poll(() => message()).toContain("taken 9, fitted −3/8 (bodice shoulder): 8 5/8");
    await expect.poll(() => cell(page, "B8").textContent()).toBe("8 5/8");
    await expect.poll(() => cell(page, "B8").getAttribute("data-laid")).toBe("fit.");
    // The next version starts from what was fitted; the book as it was stays in the list.
    await page.getByRole("button", { name: "Books" }).click();
    const books = page.getByRole("dialog");
    await books.getByRole("button", { name: /^Begin the next version/ }).click();
    await books.getByText(/^Version 2 begins: 2 figures start from what was fitted/).waitFor();
    await key("Escape");
    await expect.poll(() => typedIn("B8")).toBe("8 5/8");
    await expect.poll(() => typedIn("B2")).toBe("=(waist)-IN(0.25)");
    await key("Control+z");
    await expect.poll(() => typedIn("B8")).toBe("9");
  });

  it("a text is found in the book, gone to, and replaced in one step", async () => {
    await key("Control+f");
    await type("sections");
    const dialog = page.getByRole("dialog");
    await expect.poll(() => dialog.getByRole("status").textContent()).toMatch(/^Found in \d+ cells\.$/);
    await dialog.getByLabel("Look in").selectOption("texts");
    await dialog.getByLabel("Replace with").fill("parts");
    await dialog.getByRole("button", { name: /^Replace in \d+ cell/ }).click();
    await expect
      .poll(() => dialog.getByRole("status").textContent())
      .toMatch(/^Replaced in \d+ cells?; Undo brings it back$/);
    await dialog.getByLabel("Find").fill("Parts of the paper strip");
    await dialog.getByRole("button", { name: "Draft!A13", exact: true }).click();
    await expect.poll(() => chosen()).toBe("A13");
    await expect.poll(() => cell(page, "A13").textContent()).toBe("parts of the paper strip");
    await key("Control+z");
    await expect.poll(() => cell(page, "A13").textContent()).toBe("Sections of the paper strip");
  });

  it("column A stays in sight; a column is fitted to what it holds; a cell is shown in yards", async () => {
    await page.locator(".ht_master .wtHolder").evaluate((holder) => {
      holder.scrollLeft = 400;
    });
    await expect
      .poll(() => page.locator(".ht_clone_inline_start tbody tr").nth(7).textContent())
      .toContain("Depth");
    await page.locator(".ht_master .wtHolder").evaluate((holder) => {
      holder.scrollLeft = 0;
    });
    const box = (await cell(page, "B1").boundingBox())!;
    await page.mouse.move(box.x + box.width - 2, box.y - 30);
    await page.mouse.dblclick(box.x + box.width - 2, box.y - 30);
    await expect.poll(async () => (await cell(page, "B1").boundingBox())!.width).not.toBe(150);
    await choose("B11");
    await key("Shift+F10");
    await page.getByRole("menuitem", { name: "Choices, decimals, unit and fittings…" }).click();
    await page.getByLabel("Decimal places").selectOption("2");
    await page.getByLabel("Lengths in").selectOption("yd");
    await page.getByRole("button", { name: "Keep" }).click();
    await expect.poll(() => cell(page, "B11").textContent()).toBe("1.51 yd");
  });

  it("a short page has blank rows to type in, and grows by what is typed", async () => {
    await turn("Fit");
    await enter("A20", "a late note");
    await expect.poll(() => typedIn("A20")).toBe("a late note");
  });

  it("a page is turned to from its first columns, however far the page before was slid", async () => {
    await page.setViewportSize({ width: 1100, height: 700 });
    await turn("Fit");
    await choose("A2");
    for (let column = 0; column < 12; column++) await key("ArrowRight");
    await expect.poll(() => isUncovered("B2")).toBe(false);
    await turn("Draft");
    await expect.poll(() => chosen()).toBe("A1");
    // Column A is kept in sight and selected; the values stand in column B.
    await expect.poll(() => isUncovered("B8")).toBe(true);
  });
});

/** Whether the middle of a cell is on the screen and nothing lies over it. */
const isUncovered = (address: string): Promise<boolean> =>
  cell(page, address)
    .evaluate(
      (td) => {
        const { left, right, top, bottom } = td.getBoundingClientRect();
        return td.contains(document.elementFromPoint((left + right) / 2, (top + bottom) / 2));
      },
      undefined,
      { timeout: 2000 },
    )
    .catch(() => false);
