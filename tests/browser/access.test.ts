/** The page for everyone: axe-core (Deque's rules for WCAG 2) finds nothing, and the keyboard goes everywhere. */

import { text } from "node:stream/consumers";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { readPdf } from "../src/paper/read-pdf.ts";
import { violations } from "./axe.ts";
import { cutOff } from "./fits.ts";
import { cell, download, open, openReady } from "./page.ts";

const SHOTS = process.env.SHOTS;

/** A book in the middle of work: an error to look at, the checks open, a lay drawn. */
async function inWork(page: Page): Promise<void> {
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
  await cell(page, "B7").click();
  await page.keyboard.type("-3");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Alt+l");
  await page.locator(".check").first().waitFor();
  await page.locator(".drawing-head select").selectOption("Pinned: cloth_length_b");
  await page.locator(".lay-search").waitFor();
}

/** What axe finds in the open dialog, behind which nothing can be reached; on the page while no dialog is open. */
const violationsInReach = async (page: Page, rules: "all" | "colours" = "all"): Promise<string[]> =>
  violations(page, (await page.locator("dialog[open]").count()) > 0 ? "dialog[open]" : "html", rules);

/** The screens that nothing may be cut off on: the last is a window of 1280 × 800 at a zoom of 200 %. WHOLE=1 adds two wide ones. */
const SCREENS: readonly (readonly [width: number, height: number])[] = [
  [1280, 800],
  ...(process.env.WHOLE
    ? ([
        [1440, 900],
        [1024, 768],
      ] as const)
    : []),
  [768, 1024],
  [390, 844],
  [640, 400],
];

const SLIDING = "What if, a value varied";

/** Whether the drawing or the slider is out of sight once What if is scrolled to, or one lies over the other. */
async function apart(page: Page): Promise<string[]> {
  await page.locator("#part-what-if").evaluate((body) => body.closest(".part")!.scrollIntoView());
  return page.evaluate(() => {
    const boxes = [".drawing .window", ".slider-row"].map((one) =>
      document.querySelector(one)!.getBoundingClientRect(),
    );
    const foot = document.querySelector(".foot")!.getBoundingClientRect().top;
    const [window, slider] = boxes as [DOMRect, DOMRect];
    const unseen = boxes.filter(({ top, bottom, height }) => top < -1 || bottom > foot + 1 || height < 30);
    const over = window.bottom > slider.top && window.right > slider.left;
    return [
      ...unseen.map((box) => `out of sight: ${JSON.stringify(box)}`),
      ...(over ? ["the drawing lies over the slider"] : []),
    ];
  });
}

/** What the page is brought to, one state after another, in a window of 1280 × 800. */
const STATES: readonly (readonly [state: string, reach: (page: Page) => Promise<unknown>])[] = [
  [
    "the grid",
    async (page) => page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click(),
  ],
  ["the menu of rows and columns", (page) => page.getByRole("button", { name: "Rows and columns" }).click()],
  [
    SLIDING,
    async (page) => {
      await page.keyboard.press("Escape");
      await cell(page, "B3").click();
      await page.getByRole("button", { name: "What if", exact: true }).click();
      await page.locator(".slider").waitFor();
    },
  ],
  ["What if, solving", (page) => page.getByRole("tab", { name: "Solve for" }).click()],
  ["What if, trials", (page) => page.getByRole("tab", { name: "Trials" }).click()],
  ["What if, what matters", (page) => page.getByRole("tab", { name: "What matters" }).click()],
  [
    "a garment as worn",
    async (page) => {
      await page.getByRole("button", { name: "What if", exact: true }).click();
      await page.locator(".drawing-head select").selectOption("Pinned: skirt_cut");
      await page.getByRole("radio", { name: "As worn" }).check();
      await page.getByRole("img", { name: /as worn/ }).waitFor();
    },
  ],
  [
    "a drawing in the whole window",
    (page) => page.getByRole("button", { name: "Fill the window with Drawing" }).click(),
  ],
  [
    "the problems and a lay",
    async (page) => {
      await page.keyboard.press("Escape");
      await inWork(page);
    },
  ],
  ["the help", (page) => page.keyboard.press("F1")],
  [
    "the help of a function",
    async (page) => {
      await page.getByLabel("What do you want to do?").fill("ruffle");
      await page.locator(".help-text h4").first().waitFor();
    },
  ],
  [
    "Books",
    async (page) => {
      await page.getByRole("button", { name: "Close" }).click();
      await page.keyboard.press("Control+o");
      await page
        .getByRole("button", { name: /In inches/ })
        .first()
        .waitFor();
    },
  ],
  [
    "New",
    async (page) => {
      await page.getByRole("button", { name: "Close" }).click();
      await page.keyboard.press("Alt+n");
      await page.getByRole("button", { name: /^Gored skirt/ }).waitFor();
    },
  ],
  [
    "the questions of a garment",
    async (page) => {
      await page.getByRole("button", { name: /^Gored skirt/ }).click();
      await page.locator(".begin-figures").waitFor();
    },
  ],
  [
    "Print",
    async (page) => {
      await page.getByRole("button", { name: "Close" }).click();
      await page.keyboard.press("Alt+p");
      await page.getByRole("img", { name: /^Sheet 1 of \d+$/ }).waitFor();
    },
  ],
];

/** The states in which the page of a narrow screen is built otherwise than by a smaller size of the same things. */
const NARROW = ["the grid", "the problems and a lay", "the help of a function", "Books"];

it("in every state axe finds nothing, in light and in dark, and nothing is cut off on any screen", async () => {
  const page = await open();
  const found: string[] = [];
  for (const [state, reach] of STATES) {
    const note = (where: string, all: readonly string[]) =>
      found.push(...all.map((one) => `${state}, ${where}: ${one}`));
    for (const [width, height] of SCREENS) {
      await page.setViewportSize({ width, height });
      if (width === 1280) {
        await reach(page);
        note("in light", await violationsInReach(page));
        if (NARROW.includes(state)) {
          await page.emulateMedia({ colorScheme: "dark" });
          note("in dark", await violationsInReach(page, "colours"));
          await page.emulateMedia({ colorScheme: "light" });
        }
      }
      note(`${width} × ${height}`, await cutOff(page));
      if (width === 390 && NARROW.includes(state)) note("narrow", await violationsInReach(page));
      if (state === SLIDING && width <= 768) note(`${width}`, await apart(page));
      if (SHOTS) await page.screenshot({ path: `${SHOTS}/${state.replaceAll(" ", "-")}-${width}.png` });
    }
  }
  expect(found).toEqual([]);
});

it("a title that is too long for the top is shortened in its own field, and the top keeps to one row", async () => {
  const page = await openReady();
  await page.getByLabel("Title of the book").fill("The Miller's Daughter of Withy Green, ".repeat(5));
  for (const width of [1210, 1280, 1400, 1440, 1610]) {
    await page.setViewportSize({ width, height: 820 });
    await expect.poll(() => page.locator(".top").evaluate((top) => top.clientHeight)).toBeLessThan(60);
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  }
});

/** The part of the page that has the focus. */
const part = (page: Page) =>
  page.evaluate(() => {
    const parts = ["top", "pages", "middle", "side", "foot"];
    return parts.find((one) => document.activeElement?.closest(`.${one}`)) ?? "none";
  });

describe("by keyboard alone", () => {
  it("the side is made wider and narrower, and stays so after a reload", async () => {
    const page = await open();
    const wide = async () => (await page.locator(".side").boundingBox())!.width;
    const before = await wide();
    await page.getByRole("separator").focus();
    for (let i = 0; i < 3; i += 1) await page.keyboard.press("ArrowLeft");
    await expect.poll(wide).toBeCloseTo(before + 0.06 * 1360, 0);
    const grid = (await page.locator(".grid-host .wtHolder").first().boundingBox())!;
    const side = (await page.locator(".side").boundingBox())!;
    expect(grid.x + grid.width).toBeCloseTo(side.x, 0);
    await page.reload();
    await expect.poll(wide).toBeCloseTo(before + 0.06 * 1360, 0);
  });

  it("F6 goes through the parts of the page and back", async () => {
    const page = await openReady();
    await cell(page, "A1").click();
    for (const next of ["side", "foot", "top", "pages", "middle"]) {
      await page.keyboard.press("F6");
      await expect.poll(() => part(page)).toBe(next);
    }
    await page.keyboard.press("Shift+F6");
    await expect.poll(() => part(page)).toBe("pages");
  });

  it("back in the grid, what is typed goes into the chosen cell", async () => {
    const page = await openReady();
    await cell(page, "A20").click();
    await page.keyboard.press("F6");
    await page.keyboard.press("Shift+F6");
    await expect.poll(() => part(page)).toBe("middle");
    await page.keyboard.type("by keyboard");
    await page.keyboard.press("Enter");
    await expect.poll(() => cell(page, "A20").textContent()).toBe("by keyboard");
  });

  it("pages are turned, added, renamed and deleted", async () => {
    const page = await openReady();
    const now = () => page.locator("[aria-current='page']").textContent();
    await cell(page, "A1").click();
    await page.keyboard.press("Alt+PageDown");
    await expect.poll(() => now()).toBe("Draft");
    await page.keyboard.press("Alt+PageUp");
    await expect.poll(() => now()).toBe("Measure");
    await page.getByRole("button", { name: "Add a page to Fit" }).focus();
    await page.keyboard.press("Enter");
    await page.locator("input[aria-label='Title of the page']:focus").waitFor();
    await page.keyboard.type("Second fitting");
    await page.keyboard.press("Enter");
    await expect.poll(() => now()).toBe("Second fitting");
    await page.locator("[aria-current='page']").focus();
    await page.keyboard.press("Shift+F10");
    await page.keyboard.press("End");
    await page.keyboard.press("Enter");
    await expect
      .poll(() => page.getByRole("button", { name: "Second fitting", exact: true }).count())
      .toBe(0);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await expect
      .poll(() => page.getByRole("button", { name: "Second fitting", exact: true }).count())
      .toBe(1);
  });

  it("a page is copied for another wearer with its names, and the dialog says what stays the first wearer's", async () => {
    const page = await openReady();
    await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
    await page.locator("[aria-current='page']").focus();
    await page.keyboard.press("Shift+F10");
    for (const key of ["ArrowDown", "ArrowDown", "Enter"]) await page.keyboard.press(key);
    const dialog = page.getByRole("dialog", { name: "Copy Draft for another wearer" });
    await dialog.getByText("Cells of other pages that the copy goes on using").waitFor();
    await expect
      .poll(() => dialog.getByRole("listitem").allTextContents())
      .toContainEqual(expect.stringMatching(/^waist.*Measure!/));
    expect(await violations(page, ".dialog")).toEqual([]);
    await dialog.getByLabel("Wearer's name").fill("");
    await page.keyboard.press("Enter");
    await expect
      .poll(() => dialog.getByRole("alert").textContent())
      .toBe("type the wearer's name, or a title for the copy");
    await page.keyboard.type("the widow");
    await page.keyboard.press("Enter");
    await page
      .getByText(/^The page Draft, the widow is a copy of Draft. .* are names of its own cells/)
      .waitFor();
    await expect.poll(() => page.locator("[aria-current='page']").textContent()).toBe("Draft, the widow");
    await cell(page, "B9").click();
    await cell(page, "B8").click();
    await expect.poll(() => page.getByLabel("Name of the cell").inputValue()).toBe("depth");
    await page.keyboard.type("12");
    await page.keyboard.press("Enter");
    const hem = await cell(page, "B11").textContent();
    await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
    await expect.poll(() => cell(page, "B8").textContent()).toBe("9");
    await expect.poll(() => cell(page, "B11").textContent()).not.toBe(hem);
  });

  it("a page is saved as CSV; it is not given the title of another, and the reason is shown", async () => {
    const page = await openReady();
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Change the page Measure" }).click();
    await page.getByRole("menuitem", { name: "Save as CSV, figures in full" }).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/-measure\.csv$/);
    expect(await text(await file.createReadStream())).toMatch(/^[^\r\n]+,[^\r\n]*\r\n/);
    await page.getByRole("status").filter({ hasText: "saved as" }).waitFor();
    const second = page.waitForEvent("download");
    await page.getByRole("button", { name: "Change the page Measure" }).click();
    await page.getByRole("menuitem", { name: "Save the book as a spreadsheet, .xlsx" }).click();
    expect(await text(await (await second).createReadStream())).toMatch(/^PK/);
    await page.getByRole("status").filter({ hasText: "67 formulas stay alive" }).waitFor();
    await page.getByRole("button", { name: "Change the page Measure" }).click();
    await page.getByRole("menuitem", { name: "Rename" }).click();
    await page.locator("input[aria-label='Title of the page']:focus").waitFor();
    await page.keyboard.type("Draft");
    await page.keyboard.press("Enter");
    await page.getByRole("alert").filter({ hasText: 'there is already a page called "Draft"' }).waitFor();
  });

  it("a drawing is looked at nearer, moved and shown whole again; its words keep their size", async () => {
    const page = await open();
    const place = () => page.locator("svg.picture > g").first().getAttribute("transform");
    const tall = () =>
      page
        .locator("svg.picture .words")
        .first()
        .evaluate((text) => getComputedStyle(text).fontSize);
    const whole = await place();
    const size = await tall();
    await page.getByRole("group", { name: /^Drawing:/ }).focus();
    await page.keyboard.press("+");
    const near = await place();
    expect(near).not.toBe(whole);
    await expect.poll(() => tall()).toBe(size);
    await page.keyboard.press("ArrowLeft");
    await expect.poll(() => place()).not.toBe(near);
    await page.keyboard.press("0");
    await expect.poll(() => place()).toBe(whole);
    await page.getByRole("group", { name: /^Drawing:/ }).hover();
    await page.mouse.wheel(0, -200);
    await expect.poll(place).not.toBe(whole);

    // A garment as worn: by the keyboard, from one side or three, in words with its figures.
    await page.locator(".drawing-head select").selectOption("Pinned: skirt_cut");
    await page.getByRole("radio", { name: "Flat" }).focus();
    await page.keyboard.press("ArrowRight");
    const picture = page.getByRole("img", { name: "skirt_flat as worn, seen from front, side and back" });
    await picture.waitFor();
    await expect
      .poll(() => picture.locator("desc").textContent())
      .toMatch(/^the hem is 54 1\/4 in all round as drafted/);
    await page.getByRole("radio", { name: "Side" }).check();
    await page.getByRole("img", { name: "skirt_flat as worn, seen from the side" }).waitFor();
    const words = page.getByRole("region", { name: "What is drawn" });
    await expect.poll(() => words.textContent()).toContain("The figure has stature 65 in from Measure!B4");
    // A cuff may be drawn so too, but only when it is asked for.
    await page.locator(".drawing-head select").selectOption("");
    await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
    await cell(page, "B4").click();
    await page.getByRole("img", { name: /^Drawing of (cuff|Cut!B4)/ }).waitFor();
    await page.getByRole("radio", { name: "As worn" }).check();
    await expect.poll(() => words.textContent()).toMatch(/^Drawn as if worn at the waist\./);
    await cell(page, "B1").click();
    await page.getByRole("img", { name: "skirt_flat as worn, seen from the side" }).waitFor();

    // The drawing takes the whole window, or the whole side, and Escape gives it back.
    const wide = () => page.locator(".window").evaluate((window) => window.clientWidth);
    const before = await wide();
    const fill = (all: string) => page.getByRole("button", { name: `Fill the ${all} with Drawing` });
    const others = page.getByRole("region", { name: "Working", exact: true });
    await fill("side").press("Enter");
    await expect.poll(() => others.count()).toBe(0);
    await page.keyboard.press("Escape");
    await expect.poll(() => others.count()).toBe(1);
    await fill("window").press("Enter");
    await expect.poll(wide).toBeGreaterThan(2 * before);
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await expect.poll(wide).toBe(before);
    expect(await violations(page, ".side")).toEqual([]);
  });

  it("help finds a function by what a maker wants to do", async () => {
    const page = await open();
    // What is typed before the help is there is meant for it, not for the chosen cell.
    await page.keyboard.press("F1");
    await page.keyboard.type("how far apart to put eyelets");
    await expect
      .poll(() => page.getByLabel("What do you want to do?").inputValue())
      .toBe("how far apart to put eyelets");
    expect(await page.locator(".handsontableInput").first().inputValue()).not.toContain("eyelets");
    await expect.poll(() => page.locator(".help-one b").first().textContent()).toMatch(/EYELET/);
    const help = page.getByRole("region", { name: /^Help for EYELET/ });
    await expect.poll(() => help.textContent()).toContain("Examples");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await expect.poll(() => page.locator("dialog").count()).toBe(0);
  });
});

describe("Print", () => {
  it("shows the sheets as they will be printed, steps through them by keyboard, and saves the PDF", async () => {
    const page = await open();
    await page.getByRole("button", { name: "Print", exact: true }).click();
    const dialog = page.getByRole("dialog", { name: "Print" });
    const field = (name: string) => dialog.getByRole("combobox", { name, exact: true });
    await dialog.getByText(/^\d+ sheets of Letter: 4 pieces of the cut list$/).waitFor();
    await dialog
      .getByText("Not printed, because not on a cut list: skirt_flat, skirt_piece.")
      .first()
      .waitFor();
    await field("Pieces").selectOption({ label: "every piece of the book" });
    await dialog.getByText("22 sheets of Letter: 6 pieces").waitFor();
    await field("Pieces").selectOption({ label: "cuff (Cut)" });
    await field("Paper").selectOption("a4");
    const count = dialog.getByText(/^\d+ sheets of A4: cuff$/);
    const sheets = Number.parseInt((await count.textContent())!, 10);
    const sheet = (number: number) => dialog.getByRole("img", { name: `Sheet ${number} of ${sheets}` });
    await sheet(1).waitFor();

    const saved = await download(page, () => dialog.getByRole("button", { name: "Save the PDF" }).click());
    expect(saved.name).toBe("the-millers-daughter-of-withy-green-peplums-pattern.pdf");
    const read = await readPdf(new Uint8Array(saved.bytes));
    expect(read).toHaveLength(sheets);
    expect(read.map(({ text }) => text).join(" ")).toContain("cuff");
    const plain = (text: string) => text.replaceAll(/\s/g, "");
    await dialog.getByRole("group", { name: /^The sheet/ }).focus();
    for (const [i, { text }] of read.entries()) {
      await sheet(i + 1).waitFor();
      // The words of the preview, in their order, are those of the sheet.
      await expect.poll(async () => plain((await sheet(i + 1).textContent())!)).toContain(plain(text));
      await page.keyboard.press("ArrowRight");
    }
    await page.keyboard.press("Home");
    await sheet(1).waitFor();

    // The browser's own print gets the same file; here it is only looked at, not printed.
    await page.evaluate(() => {
      Object.defineProperty(HTMLIFrameElement.prototype, "contentWindow", {
        get() {
          return { focus: () => {}, print: () => document.body.setAttribute("data-printed", this.src) };
        },
      });
    });
    await dialog.getByRole("button", { name: "Print it" }).click();
    await dialog.getByText("The browser's print is open.").waitFor();
    await expect.poll(() => page.locator("body").getAttribute("data-printed")).toMatch(/^blob:/);

    // A lay that is only estimated says so before it is printed.
    await field("What").selectOption("lay");
    await dialog.getByText("A length from a quick lay: enough cloth").waitFor();
    await field("What").selectOption("pattern");

    // A roll that is too narrow is refused in a sentence; the choices stay when the dialog is opened again.
    await field("Paper").selectOption("A roll");
    await dialog.getByLabel("Width of the roll").fill("3 in");
    await dialog.getByRole("alert").filter({ hasText: "wide, not 3 in" }).waitFor();
    await expect.poll(() => sheet(1).count()).toBe(0);
    await expect.poll(() => dialog.getByRole("button", { name: "Save the PDF" }).isDisabled()).toBe(true);
    await page.keyboard.press("Escape");
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe("Print");
    await page.keyboard.press("Enter");
    await dialog.getByRole("alert").filter({ hasText: "wide, not 3 in" }).waitFor();

    // From the drawing and the working the dialog is opened for what is seen there.
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Print this pattern" }).click();
    await field("Paper").selectOption("A0");
    await dialog.getByText(/^1 sheet of A0: skirt half$/).waitFor();
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Print this working" }).click();
    await dialog.getByText("1 sheet of A0: the working of 1 cell").waitFor();
    await expect.poll(() => dialog.getByLabel("Cells").inputValue()).toBe("Measure!A1");
  });
});

it("where colours are the reader's own, the heads of the chosen cell's column and row stand out from the others", async () => {
  const page = await open({ forcedColors: "active" });
  await cell(page, "B4").click();
  const headsThatStandOut = () =>
    page.evaluate(() => {
      const heads = [...document.querySelectorAll(".ht_clone_top th, .ht_clone_inline_start tbody th")];
      const colour = (head: Element) => getComputedStyle(head).backgroundColor;
      const others = colour(heads.find((head) => head.textContent === "7")!);
      const out = heads.filter((head) => colour(head) !== others);
      return [...new Set(out.map((head) => `${head.textContent} ${colour(head)}`))];
    });
  const highlight = await page.evaluate(() => {
    const sample = document.body.appendChild(document.createElement("p"));
    sample.style.backgroundColor = "Highlight";
    const colour = getComputedStyle(sample).backgroundColor;
    sample.remove();
    return colour;
  });
  await expect.poll(headsThatStandOut).toEqual([`BanyDrawn now ${highlight}`, `4 ${highlight}`]);
});

describe("the browser's own print", () => {
  it("gives the whole page and the drawing, without menus, and leaves the screen as it was", async () => {
    const page = await open();
    await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
    await page.locator("svg.picture").waitFor();
    await page.waitForFunction(() => {
      window.dispatchEvent(new Event("beforeprint"));
      return document.querySelector(".print-sheet") !== null;
    });
    await page.emulateMedia({ media: "print" });
    const sheet = page.locator(".print-sheet");
    await expect.poll(() => sheet.locator("svg.picture").isVisible()).toBe(true);
    await expect.poll(() => page.locator(".top").isVisible()).toBe(false);
    await expect.poll(() => sheet.locator("h1").textContent()).toBe("Cut");
    if (SHOTS) await page.screenshot({ path: `${SHOTS}/printed.png`, fullPage: true });
    await page.emulateMedia({ media: null });
    await page.locator(".drawing svg.picture").waitFor();
    const printed = await readPdf(new Uint8Array(await page.pdf({ format: "A4" })));
    const words = printed.map(({ text }) => text).join(" ");
    // A length from a quick lay is not printed as if it were certain.
    for (const text of ["Mirrored", "hem guard", "Is there enough?", "from a quick lay"])
      expect(words.replace(/\s+/g, " ")).toContain(text);
    expect(words).not.toContain("What if");
    // Beneath the drawing stands what it shows and what its lines mean.
    expect(words.replace(/\s+/g, " ")).toMatch(
      /Drawing of skirt_cut, piece 29 1\/4 × 19 1\/2.*straight grain/,
    );
    await expect.poll(() => sheet.count()).toBe(0);
    await expect.poll(() => page.locator(".top").isVisible()).toBe(true);
  });

  it("gives the lay that is in view, with its length and how it was found", async () => {
    const page = await openReady();
    await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
    await cell(page, "B11").click();
    await page.locator(".lay-board .lay-picture").waitFor();
    const printed = await readPdf(new Uint8Array(await page.pdf({ format: "A4" })));
    const words = printed.map(({ text }) => text).join(" ");
    const lay = words
      .replace(/\s+/g, " ")
      .split("The lay of cloth_length_b: 9 pieces on cloth 58 in wide")[1];
    for (const text of [
      "hem guard, mirrored",
      "29 3/4 in of cloth 58 in wide",
      "Proved: no lay can be shorter",
    ])
      expect(lay).toContain(text);
  });
});
