/** The page as it is read aloud: Chromium's accessibility tree, what is announced, and where the keyboard is after each act. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { cell, openReady } from "./page.ts";

interface Node {
  readonly ignored: boolean;
  readonly role?: { readonly value: string };
  readonly name?: { readonly value: string };
  readonly description?: { readonly value: string };
  readonly properties?: readonly { readonly name: string; readonly value: { readonly value: unknown } }[];
}

/** What a screen reader is given, each thing as its role, name, description and whether it has the focus. */
async function tree(page: Page) {
  const session = await page.context().newCDPSession(page);
  const { nodes } = (await session.send("Accessibility.getFullAXTree")) as unknown as { nodes: Node[] };
  await session.detach();
  return nodes
    .filter(({ ignored }) => !ignored)
    .map(({ role, name, description, properties = [] }) => ({
      role: role?.value ?? "",
      name: name?.value ?? "",
      about: description?.value ?? "",
      focused: properties.some((one) => one.name === "focused" && one.value.value === true),
    }));
}

const turnTo = (page: Page, title: string) =>
  page.getByRole("navigation").getByRole("button", { name: title, exact: true }).click();

/** What is announced waits until it stands still. */

/** Where the keyboard is; "the page" when it is lost. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const now = document.activeElement;
    return now === null || now === document.body
      ? "the page"
      : `${now.tagName} ${now.getAttribute("aria-label") ?? now.textContent}`.slice(0, 60);
  });

it("the grid is read with its headings, a cell with the words of its row; a drawing and a lay in words; what changes is announced", async () => {
  const page = await openReady();
  await turnTo(page, "Draft");
  await cell(page, "B11").click();
  await expect.poll(() => focused(page)).toMatch(/^TD/);
  const read = await tree(page);
  const of = (role: string) => read.filter((one) => one.role === role);
  expect(of("columnheader").map(({ name }) => name)).toEqual(
    expect.arrayContaining(["A, What, text", "B, Value, any", "C, Note, text"]),
  );
  expect(of("rowheader").map(({ name }) => name)).toEqual(expect.arrayContaining(["1", "2", "11"]));
  const chosen = read.find(({ role, focused: here }) => role === "gridcell" && here);
  expect(chosen).toEqual({
    role: "gridcell",
    name: "Hem, all round, Value: 54 1/4",
    about: expect.stringMatching(/named hem; calculated/),
    focused: true,
  });
  const grid = page.getByRole("grid", { name: "Draft", exact: true });
  await expect.poll(() => grid.getAttribute("aria-rowcount")).toMatch(/^\d+$/);
  await expect.poll(() => grid.getAttribute("aria-colcount")).toBe("4");

  // The drawing: each edge of the piece with its length; and each copy of a lay with its place.
  const draw = page.locator(".drawing-head select");
  await draw.selectOption("Pinned: skirt_cut");
  await expect
    .poll(async () => (await tree(page)).find(({ name }) => name.startsWith("Drawing of skirt_cut"))?.about)
    .toMatch(/: waist 21 1\/2, centre front 11 1\/8, hem 35, centre back 11; /);
  await draw.selectOption("Pinned: cloth_length_b");
  await expect
    .poll(async () => (await tree(page)).find(({ name }) => name.startsWith("The lay of"))?.about)
    .toMatch(/cuff 2: [\d/ ]+ in to [\d/ ]+ in along, /);

  // The number of problems is announced when it has changed, and not before.
  const foot = page.locator(".foot [role='status']");
  await expect.poll(() => foot.textContent()).toBe("");
  await cell(page, "B8").click();
  await page.keyboard.type("-3");
  await page.keyboard.press("Enter");
  await expect.poll(() => foot.textContent()).toMatch(/^\d+ problems?$/);
  // The problem is in the cell's own words, and not announced by the line above the grid too.
  await cell(page, "B8").click();
  expect((await tree(page)).find((one) => one.focused && one.role === "gridcell")?.name).toBe(
    "Depth below the seam, Value: -3",
  );
  await expect.poll(() => page.locator("#cell-message").getAttribute("aria-live")).toBe("off");
  await page.keyboard.press("Control+z");
  await expect.poll(() => foot.textContent()).toBe("No problems");

  // Watched figures are announced once the slider rests.
  await cell(page, "B9").click();
  await cell(page, "B8").click();
  await page.getByRole("button", { name: "What if", exact: true }).click();
  await page.locator(".slider input[type='range']").focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => page.locator(".watch [role='status']").textContent()).toMatch(/hem_binding .*\d/);
});

it("the keyboard is not lost to the page after an act", async () => {
  const page = await openReady();
  const button = (name: string | RegExp) => page.getByRole("button", { name, exact: true }).first();
  const item = (name: string | RegExp) => page.getByRole("menuitem", { name }).first().click();
  const rows = async (name: string | RegExp) => {
    await button("Rows and columns").click();
    await item(name);
  };
  const inDialog = (name: string) => async () => {
    await button(name).click();
    await page.locator("dialog[open]").waitFor();
    await page.keyboard.press("Escape");
  };
  const acts: readonly (readonly [act: string, does: () => Promise<unknown>])[] = [
    ["Books is closed", inDialog("Books")],
    ["New is closed", inDialog("New")],
    ["Print is closed", inDialog("Print")],
    ["Help is closed", inDialog("Help")],
    [
      "the whole drawing is shown again",
      async () => {
        await button("Zoom in").click();
        await button("Show all").click();
      },
    ],
    ["a note is left", inDialog("Note")],
    ["a row is inserted", () => rows("Insert row above")],
    ["a row is deleted", () => rows("Delete row")],
    ["a column is deleted", () => rows("Delete column")],
    ["the first is undone", () => button("Undo").click()],
    ["the second is undone", () => button("Undo").click()],
    ["the last is undone", () => button("Undo").click()],
    ["the first is redone", () => button("Redo").click()],
    ["the second is redone", () => button("Redo").click()],
    ["the last is redone", () => button("Redo").click()],
    [
      "a page is added",
      async () => {
        await button("Add a page to Fit").press("Enter");
        await page.keyboard.type("Second fitting");
        await page.keyboard.press("Enter");
      },
    ],
    [
      "a page is saved as CSV",
      async () => {
        await button("Change the page Second fitting").click();
        await item("Save as CSV, figures in full");
        await button("Dismiss").waitFor();
      },
    ],
    ["a message is dismissed", () => button("Dismiss").click()],
    [
      "a page is deleted",
      async () => {
        await button("Change the page Second fitting").click();
        await item("Delete");
      },
    ],
    [
      "a cell is not watched any more",
      async () => {
        await turnTo(page, "Draft");
        await cell(page, "B8").click();
        await button("What if").click();
        await button(/^Stop watching/).click();
      },
    ],
    [
      "nothing is watched any more",
      async () => {
        const stop = button(/^Stop watching/);
        while ((await stop.count()) > 0) await stop.click();
      },
    ],
    [
      "a preview is discarded",
      async () => {
        await page.locator(".slider input[type='range']").press("ArrowRight");
        await button("Discard").click();
      },
    ],
    [
      "a file is not imported",
      async () => {
        await page.evaluate(() => {
          const dataTransfer = new DataTransfer();
          dataTransfer.items.add(new File(["a,b\n1,2\n"], "t.csv", { type: "text/csv" }));
          const drop = new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true });
          document.querySelector(".middle")!.dispatchEvent(drop);
        });
        await page.locator("dialog[open]").waitFor();
        await page.keyboard.press("Escape");
      },
    ],
    [
      "the earlier versions are closed",
      async () => {
        await button("Books").click();
        await button(/^Earlier versions of/).click();
        await button(/^Earlier versions of/).click();
      },
    ],
    ["a book is copied", () => button(/^Copy …/).click()],
    ["the copy is given up", () => button("Cancel").click()],
    [
      "the copy is made",
      async () => {
        await button(/^Copy …/).click();
        await page.keyboard.press("Enter");
        await page.getByText(/is a copy of .* and stands in the list/).waitFor();
      },
    ],
    [
      "a book is moved to the bin",
      async () => {
        await button(/^Move to bin .*, copy$/).click();
        await page.getByText("Bin: 1 book").click();
      },
    ],
    [
      "a book is not deleted after all",
      async () => {
        await button(/^Delete …/).click();
        await button("Cancel").click();
      },
    ],
    [
      "a book is restored",
      async () => {
        await button(/^Restore/).click();
        await page.getByText("Bin: 1 book").waitFor({ state: "detached" });
      },
    ],
    ["the list is closed", () => page.keyboard.press("Escape")],
  ];
  await cell(page, "B5").click();
  const lost: string[] = [];
  for (const [act, does] of acts) {
    await does();
    // Whatever has the focus has it within two frames and a turn of the event loop.
    await page.evaluate(
      () =>
        new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 30)))),
    );
    await expect
      .poll(() => focused(page), { timeout: 1500 })
      .not.toBe("the page")
      .catch(() => lost.push(act));
  }
  expect(lost).toEqual([]);
}, 120_000);
