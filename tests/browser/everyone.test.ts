/** The page for readers of large type, on small screens, and for what is written from right to left. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { ownTexts, untranslated } from "../src/setup/made-up.ts";
import { cutOff, tooSmall } from "./fits.ts";
import { cell, open, openReady } from "./page.ts";
import { madeUp, PSEUDO, textsInSight, withPseudo, wrongWayRound } from "./pseudo.ts";

/** A browser whose reader has set its type half as large again: 24 pixels where 16 is usual. */
async function largeType(page: Page, standard = 24): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Page.setFontSizes", { fontSizes: { standard, fixed: 20 } });
}

const SCREENS = [
  [1280, 800],
  [640, 360],
  [390, 844],
] as const;

/** What lies over the line at the foot of the page, which is in sight at the lower edge of the window. */
const overFoot = (page: Page) =>
  page.evaluate(() => {
    const foot = document.querySelector(".foot")!;
    const { left, right, top, bottom } = foot.querySelector(".count")!.getBoundingClientRect();
    const points = [left + 8, (left + right) / 2, right - 8].map((x) => [x, (top + bottom) / 2] as const);
    return [
      ...(bottom > innerHeight + 1 || top < 0
        ? [`the foot is at ${top} to ${bottom} of ${innerHeight}`]
        : []),
      ...points
        .map(([x, y]) => document.elementFromPoint(x, y))
        .filter((over) => !foot.contains(over))
        .map((over) => `the foot is covered by ${over?.outerHTML.slice(0, 120)}`),
    ];
  });

it("with large type nothing is cut off and the foot is not covered, on a desk, at a zoom of 200 % and on a phone", async () => {
  const page = await open({ prepare: (one) => largeType(one) });
  const button = (name: string | RegExp) => page.getByRole("button", { name, exact: true }).first();
  const states: readonly (readonly [state: string, reach: () => Promise<unknown>, over?: string])[] = [
    [
      "the grid",
      () => page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click(),
    ],
    ["the menu of rows and columns", () => button("Rows and columns").click(), ".menu"],
    ["a note", () => button("Note").click(), "dialog[open]"],
    ["Books", () => button("Books").click(), "dialog[open]"],
    [
      "a garment's questions",
      async () => {
        await button("New").click();
        await page.getByRole("button", { name: /^Gored skirt/ }).click();
        await page.locator(".begin-figures").waitFor();
      },
      "dialog[open]",
    ],
    ["Help", () => page.keyboard.press("F1"), "dialog[open]"],
  ];
  const found: string[] = [];
  for (const [width, height] of SCREENS) {
    await page.setViewportSize({ width, height });
    for (const [state, reach, over] of states) {
      // What has room on a phone has room on a desk.
      if (over && width > 1000) continue;
      await reach();
      if (over) await page.locator(over).waitFor();
      // The title is a field, in which a long one is gone through.
      const cut = (await cutOff(page)).filter((one) => !one.includes('class="title"'));
      const bad = [...cut, ...(over ? [] : await overFoot(page))];
      found.push(...bad.map((one) => `${state}, ${width} × ${height}: ${one}`));
      if (!over) continue;
      await page.keyboard.press("Escape");
      await page.locator(over).waitFor({ state: "detached" });
    }
  }
  expect(found).toEqual([]);

  // The grid's type and rows are as large; a width goes into the book as it is on a screen of usual type.
  const type = await cell(page, "A2").evaluate((td) => getComputedStyle(td).fontSize);
  expect(type).toBe("21px");
  await page.setViewportSize({ width: 1280, height: 800 });
  const { height } = (await cell(page, "A2").boundingBox())!;
  expect(height).toBeGreaterThan(33);
});

it("with type twice as large the names in a lay stay on their pieces, and the figures of its tape apart", async () => {
  const page = await open({ prepare: (one) => largeType(one, 32) });
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
  await cell(page, "B9").click();
  await page.locator(".drawing-head select").selectOption("Pinned: cloth_length_b");
  await page.locator(".lay-picture").waitFor();
  const words = await page.evaluate(() => {
    const boxOf = (one: Element) => one.getBoundingClientRect();
    const copies = [...document.querySelectorAll(".lay-table .lay-copy")];
    const beyond = copies.flatMap((copy) => {
      const text = copy.querySelector("text");
      if (!text) return [];
      const [own, piece] = [boxOf(text), boxOf(copy.querySelector(".lay-cut")!)];
      // The box of a text is a quarter taller than its letters, at either side.
      const slack = Math.min(own.width, own.height) / 4;
      const inside =
        own.left > piece.left - slack &&
        own.right < piece.right + slack &&
        own.top > piece.top - slack &&
        own.bottom < piece.bottom + slack;
      return inside ? [] : [text.textContent];
    });
    const tape = [...document.querySelectorAll(".lay-tape text")].map(boxOf);
    const over = tape.filter((one, i) =>
      tape.some((other, k) => k > i && other.left < one.right && one.left < other.right),
    );
    const table = boxOf(document.querySelector(".lay-table")!);
    return {
      named: copies.length,
      beyond,
      over: over.length,
      above: tape.filter(({ top }) => top < table.top).length,
    };
  });
  expect(words).toEqual({ named: 9, beyond: [], over: 0, above: 0 });
});

it("what is written from right to left stands at the right: a title, a page, a cell, a note; formulas and figures do not", async () => {
  const page = await openReady();
  const direction = (element: ReturnType<Page["locator"]>) =>
    element.evaluate((one) => getComputedStyle(one).direction);
  const title = page.getByLabel("Title of the book");
  await title.fill("חצאית הטוחן");
  await title.press("Enter");
  expect(await direction(title)).toBe("rtl");
  await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
  await cell(page, "A24").click();
  await page.keyboard.type("مقاس الخصر 27 بوصة");
  await page.keyboard.press("Enter");
  await cell(page, "A24").click();
  /** Whether the first letter of a cell stands at its right edge. */
  const fromRight = (address: string) =>
    cell(page, address).evaluate((td) => {
      const letters = document.createRange();
      const walker = document.createTreeWalker(td, NodeFilter.SHOW_TEXT);
      const text = walker.nextNode()!;
      letters.setStart(text, 0);
      letters.setEnd(text, 1);
      const [first, all] = [letters.getBoundingClientRect(), td.getBoundingClientRect()];
      return all.right - first.right < 24;
    });
  await expect.poll(() => fromRight("A24")).toBe(true);
  expect(await fromRight("A23")).toBe(false);
  const typed = page.getByLabel("Text or formula of the cell");
  expect(await direction(typed)).toBe("rtl");
  await page.getByRole("button", { name: "Note", exact: true }).click();
  const note = page.getByLabel("Note", { exact: true });
  await note.fill("למדוד שוב");
  expect(await direction(note)).toBe("rtl");
  await page.getByRole("button", { name: "Save note" }).click();
  await page.locator("dialog[open]").waitFor({ state: "detached" });
  await expect.poll(() => direction(page.locator(".cell-message-note [dir]"))).toBe("rtl");
  await cell(page, "B11").click();
  expect(await direction(typed)).toBe("ltr");
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
});

it("on a phone the grid begins in the upper half and is slid by a finger; the words of its rows stay; a button gives what a right click gives", async () => {
  const page = await open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  const session = await page.context().newCDPSession(page);
  const touch = (type: string, points: readonly { x: number; y: number }[]) =>
    session.send("Input.dispatchTouchEvent", { type: type as "touchMove", touchPoints: [...points] });
  const swipe = async (dx: number, dy: number) => {
    const box = (await page.locator(".grid-host").boundingBox())!;
    const [x, y] = [box.x + 300, box.y + box.height / 2];
    await touch("touchStart", [{ x, y }]);
    for (let i = 1; i <= 8; i += 1) await touch("touchMove", [{ x: x + (dx * i) / 8, y: y + (dy * i) / 8 }]);
    await touch("touchEnd", []);
  };
  const slid = () =>
    page.locator(".ht_master .wtHolder").evaluate((holder) => [holder.scrollTop, holder.scrollLeft]);
  await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).tap();
  expect((await page.locator(".grid-host").boundingBox())!.y).toBeLessThan(844 / 2);
  await swipe(0, -150);
  await expect.poll(async () => (await slid())[0]).toBeGreaterThan(40);
  await swipe(-150, 0);
  await expect.poll(async () => (await slid())[1]).toBeGreaterThan(40);
  // A new page keeps no columns in sight by its book; on a narrow screen its first one stays all the same.
  await page.getByRole("button", { name: "Add a page to Draft" }).tap();
  await page.locator("input[aria-label='Title of the page']:focus").waitFor();
  await page.keyboard.press("Enter");
  await page.locator(".ht_clone_inline_start tbody td[aria-colindex='2']").first().waitFor();
  await page.getByRole("button", { name: "Rows and columns" }).tap();
  const item = page.getByRole("menuitem", { name: "Insert row above" });
  expect((await item.boundingBox())!.height).toBeGreaterThan(43.5);
  await page.keyboard.press("Escape");
  await item.waitFor({ state: "detached" });
  // So does a finger that rests on a cell, for that cell.
  await cell(page, "B3").evaluate((td) =>
    td.dispatchEvent(
      new PointerEvent("contextmenu", {
        bubbles: true,
        cancelable: true,
        pointerType: "touch",
        clientX: 200,
        clientY: 500,
      }),
    ),
  );
  await page.getByRole("menuitem", { name: /^Heading and kind of column B/ }).waitFor();
  await page.keyboard.press("Escape");
  expect(await tooSmall(page)).toEqual([]);
  // A tap chooses a cell; the next one opens it, later than a double tap would be. While a formula is typed a tap points.
  await cell(page, "B2").tap();
  await expect.poll(() => page.locator(".formula-place").textContent()).toBe("B2");
  await page.waitForTimeout(1100);
  await cell(page, "B2").tap();
  const field = page.locator(".grid-host textarea:focus");
  await field.waitFor();
  await page.keyboard.type("=2*");
  await cell(page, "B1").tap();
  await expect.poll(() => field.inputValue()).toBe("=2*B1");
  await page.keyboard.press("Escape");
});

it("on a phone the foot says that a preview is shown, wherever the page is slid to", async () => {
  const page = await open({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  const foot = page.locator(".foot .count");
  await cell(page, "C4").tap();
  await page.getByRole("button", { name: "What if", exact: true }).tap();
  await page.getByRole("slider").press("ArrowRight");
  await expect.poll(() => foot.textContent()).toBe("No problems in the preview");
  await page.getByRole("button", { name: "Discard" }).tap();
  await expect.poll(() => foot.textContent()).toBe("No problems");
});

it("every dialog is opened, read and closed by keyboard alone: it has a name, all in it has names, and the keyboard comes back", async () => {
  const page = await openReady();
  const session = await page.context().newCDPSession(page);
  /** What can have the keyboard and has no name. */
  const nameless = async () => {
    const { nodes } = await session.send("Accessibility.getFullAXTree");
    return nodes
      .filter(
        ({ ignored, role, name, properties = [] }) =>
          !ignored &&
          !["RootWebArea", "gridcell"].includes(role?.value) &&
          properties.some((one) => one.name === "focusable" && one.value.value) &&
          !name?.value,
      )
      .map(({ role, nodeId }) => `${role?.value} ${nodeId}`);
  };
  const fromMenu = (item: string) => async () => {
    await page.getByRole("button", { name: "Rows and columns" }).press("Enter");
    await page.getByRole("menuitem", { name: item }).press("Enter");
  };
  const button = (name: string) => () =>
    page.getByRole("button", { name, exact: true }).first().press("Enter");
  const dialogs: readonly (readonly [name: RegExp, reach: () => Promise<unknown>])[] = [
    [/^Books$/, () => page.keyboard.press("Control+o")],
    [/^What do you want to make\?$/, () => page.keyboard.press("Alt+n")],
    [/^Help$/, () => page.keyboard.press("F1")],
    [/^Print$/, button("Print")],
    [/^Note on /, button("Note")],
    [/^Sort /, fromMenu("Sort")],
    [/^Column B$/, fromMenu("Heading and kind")],
    [/decimals, unit and fittings$/, fromMenu("Choices, decimals")],
    [/^Names from the labels of /, fromMenu("Names from labels")],
  ];
  await cell(page, "B3").click();
  const found: string[] = [];
  for (const [name, reach] of dialogs) {
    await reach();
    const dialog = page.getByRole("dialog", { name });
    await dialog.waitFor();
    const inside = () => dialog.evaluate((one) => one.contains(document.activeElement));
    await expect.poll(inside).toBe(true);
    found.push(...(await nameless()).map((one) => `${name}: ${one}`));
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    await expect.poll(() => page.evaluate(() => document.activeElement === document.body)).toBe(false);
  }
  expect(found).toEqual([]);
});

/** A table of another program with much to say of: blanks, two decimal marks, dates in two ways, a formula, a letter of Windows-1252. */
const TABLE = "1;2;3;4\n28,5;3.5;04/05/2026;=1+1\n0012;30;\xe4\n";

/** English on the page in every language: the names of languages and papers, and what the library of the grid says of its corner. */
const ENGLISH_ALWAYS = ["English", "Select whole grid", "Letter"];

it("in a language from right to left no sentence of the page stays English and nothing stands the wrong way round, in the grid, the panels and the dialogs", async () => {
  const page = await open({ prepare: withPseudo });
  await page.locator(`.top select:has(option[value=${PSEUDO}])`).selectOption(PSEUDO);
  await page.locator(`html[lang=${PSEUDO}] .ht_master tbody td`).first().waitFor();
  await page.locator("[data-functions=all]").waitFor({ state: "attached" });
  // What is typed below, and the names of encodings.
  const own = ownTexts().add("nothing").add("Windows-1252").add("UTF-8");
  const found = new Set<string>();
  const noteWrongWay = async (state: string) => {
    for (const text of await wrongWayRound(page)) found.add(`${state}, wrong way round: ${text}`);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    if (over > 0) found.add(`${state}: the page is ${over} px wider than its window`);
  };
  const note = async (state: string) => {
    const texts = (await textsInSight(page)).filter((text) => !ENGLISH_ALWAYS.includes(text));
    expect(texts.length).toBeGreaterThan(2);
    for (const text of untranslated(texts, own)) found.add(`${state}: ${text}`);
    await noteWrongWay(state);
  };
  const button = (name: string) => page.getByRole("button", { name: madeUp(name), exact: true }).first();
  const fromMenu = (item: string) => async () => {
    await button("Rows and columns").click();
    await page.getByRole("menuitem", { name: madeUp(item) }).click();
  };
  await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
  await cell(page, "C22").click();
  await page.keyboard.type("=SUM(nothing; ");
  await page.locator(".argument-hint").waitFor();
  await note("a formula being typed");
  await page.keyboard.type(")");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Alt+l");
  await cell(page, "B3").click();
  await note("the problems, the drawing and the working");
  await page.getByRole("navigation").getByRole("button", { name: "Cut", exact: true }).click();
  await cell(page, "B8").click();
  await page.locator(".lay-table").first().waitFor();
  // In its working the names and the formulas of the steps are the book's.
  await noteWrongWay("a lay");
  const working = page.locator(".working :is(.call-name, .step-words, .answer, .caution, .source)");
  await expect.poll(() => working.count()).toBeGreaterThan(3);
  expect(untranslated(await working.allInnerTexts(), own)).toEqual([]);
  await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
  await cell(page, "B3").click();
  await button("What if").click();
  await page.locator(".slider").waitFor();
  await note("What if");
  await page.getByRole("tab", { name: madeUp("Solve for"), exact: true }).click();
  await page.locator(".solve").waitFor();
  await note("What if, solving");
  await cell(page, "B11").click();
  await page.getByRole("tab", { name: madeUp("What matters"), exact: true }).click();
  await page.locator(".bars .bar-words").first().waitFor();
  // The working beside it has the names of steps.
  const matters = (await page.locator(".matters").allInnerTexts()).join("\n").split("\n");
  expect(untranslated(matters, own)).toEqual([]);
  const table = { name: "1", mimeType: "text/csv", buffer: Buffer.from(TABLE, "latin1") };
  const openTable = async () => {
    await page.keyboard.press("Control+o");
    await page.getByLabel(madeUp("A file to open")).setInputFiles(table);
  };
  const helpOn = async (name: string) => {
    await page.keyboard.press("F1");
    await page.locator("dialog[open] input").first().fill(name);
    // In the field, Escape would empty it.
    await page.keyboard.press("Tab");
  };
  const dialogs: readonly (readonly [state: string, reach: () => Promise<unknown>, there?: string])[] = [
    ["a note", () => button("Note").click()],
    ["sorting", fromMenu("Sort")],
    ["the kind of a column", fromMenu("Heading and kind")],
    ["the choices of a cell", fromMenu("Choices, decimals")],
    ["names from labels", fromMenu("Names from labels")],
    ["finding", () => page.keyboard.press("Control+f")],
    ["Books", () => page.keyboard.press("Control+o"), ".book"],
    ["New", () => page.keyboard.press("Alt+n")],
    ["Help", () => page.keyboard.press("F1"), ".help-chapter"],
    ["the help of a function", () => helpOn("SLASHED_PANEL"), ".takes"],
    ["Print", () => page.keyboard.press("Alt+p")],
    ["a table, which a worker reads", openTable, ".import-said"],
  ];
  for (const [state, reach, there = ""] of dialogs) {
    await reach();
    await page.locator(`dialog[open] ${there}`).first().waitFor();
    await note(state);
    await page.keyboard.press("Escape");
    await page.locator("dialog[open]").waitFor({ state: "detached" });
  }
  expect([...found]).toEqual([]);
});
