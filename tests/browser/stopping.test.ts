/** What builds the engine anew for a very large book can be stopped: everything is as it was then, and nothing typed is lost. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { blankBook } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";
import { state, type as typeIn } from "./kept.ts";
import { cell, open } from "./page.ts";

const [ROWS, COLUMNS] = [6000, 5];

/** A book of 30,000 formulas, as a file. */
function great() {
  const blank = blankBook("The whole county", "cm", "1 mm");
  const rows = Array.from({ length: ROWS }, (_, row) => [
    `${60 + (row % 40)}`,
    ...Array.from({ length: COLUMNS }, (_, i) => `=${"ABCDE"[i]}${row + 1}+${i}`),
  ]);
  const columns = Array.from({ length: COLUMNS + 1 }, () => ({
    heading: "",
    kind: "any" as const,
    width: 80,
  }));
  const pages = blank.pages.map((page, i) => (i === 0 ? { ...page, columns, rows } : page));
  const buffer = Buffer.from(writeBook({ ...blank, pages }));
  return { name: "county.json", mimeType: "application/json", buffer };
}

/** Presses Stop as soon as it is there for this work. The page is slowed down until then, so that Stop is there on a fast machine, too. */
async function stopped(page: Page, work: string): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await pressed(page, work);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await session.detach();
}

const pressed = (page: Page, work: string): Promise<void> =>
  page.evaluate(
    (said) =>
      new Promise<void>((done) => {
        const watch = new MutationObserver(() => {
          const stop = document.querySelector<HTMLButtonElement>(".progress button");
          if (!stop?.closest(".progress")?.textContent?.includes(said)) return;
          watch.disconnect();
          stop.click();
          done();
        });
        watch.observe(document.body, { childList: true, subtree: true, characterData: true });
      }),
    work,
  );

const titleOf = (page: Page) => page.getByLabel("Title of the book").inputValue();

async function drop(page: Page, file: ReturnType<typeof great>): Promise<void> {
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], "county.json", { type: "application/json" }));
    dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
  }, file.buffer.toString());
}

const paste = (page: Page): Promise<void> =>
  page.evaluate(
    ([rows, columns]) => {
      const clipboardData = new DataTransfer();
      const line = Array(columns).fill("=2*3").join("\t");
      clipboardData.setData("text/plain", Array(rows).fill(line).join("\n"));
      const how = { bubbles: true, cancelable: true };
      document.activeElement!.dispatchEvent(new ClipboardEvent("paste", { clipboardData, ...how }));
    },
    [ROWS, COLUMNS] as const,
  );

it("opening a very large book, a very large paste, its redo and an earlier version stop, and all is as it was; what is typed meanwhile is kept", async () => {
  const page = await open();
  const before = await titleOf(page);
  const file = great();

  let stopping = stopped(page, "Opening “The whole county”");
  await drop(page, file);
  await stopping;
  await page.getByText("“county.json” was not opened: it was stopped").waitFor();
  expect(await titleOf(page)).toBe(before);
  await typeIn(page, "A21", "typed after it");
  await expect.poll(() => cell(page, "A21").textContent()).toBe("typed after it");

  // While the other book is prepared, this one takes what is typed, to the end of the word.
  await cell(page, "A22").click();
  await page.keyboard.press("Escape");
  await drop(page, file);
  await page.getByText("Opening “The whole county” …").waitFor();
  await page.keyboard.type("typed meanwhile", { delay: 200 });
  await page.keyboard.press("Enter");
  await expect.poll(() => titleOf(page)).toBe("The whole county");
  await expect.poll(() => cell(page, "F1").textContent()).toBe("70");
  await page.keyboard.press("Control+o");
  await page.locator(".book-open").filter({ hasText: before }).filter({ hasText: "changed" }).click();
  await expect.poll(() => titleOf(page)).toBe(before);
  await expect.poll(() => cell(page, "A22").textContent()).toBe("typed meanwhile");

  await page.getByRole("navigation").getByRole("button", { name: "Fit", exact: true }).click();
  await cell(page, "B2").click();
  const was = await cell(page, "B3").textContent();
  expect(was).not.toBe("6");
  stopping = stopped(page, "Pasting 30000 cells");
  await paste(page);
  await stopping;
  await page.getByText("Stopped, the book is as it was: Pasting 30000 cells").waitFor();
  expect(await cell(page, "B3").textContent()).toBe(was);

  await cell(page, "B2").click();
  await paste(page);
  await expect.poll(() => cell(page, "B3").textContent()).toBe("6");
  await page.keyboard.press("Control+z");
  await expect.poll(() => cell(page, "B3").textContent()).toBe(was);
  stopping = stopped(page, "Redo: paste");
  await page.keyboard.press("Control+y");
  await stopping;
  await page.getByText(/Stopped, the book is as it was: Redo/).waitFor();
  expect(await cell(page, "B3").textContent()).toBe(was);
  await page.keyboard.press("Control+y");
  await expect.poll(() => cell(page, "B3").textContent()).toBe("6");
  await expect.poll(() => state(page)).toBe("Saved in this browser");

  // The version before the paste comes back at once, and keeps the large state as a version: to bring that back takes long.
  const bringBack = async (which: "first" | "last") => {
    await page.keyboard.press("Control+o");
    await page
      .getByRole("button", { name: /^Earlier versions/ })
      .first()
      .click();
    const list = page.getByRole("region", { name: "Earlier versions" });
    await list
      .getByRole("listitem")
      [which]()
      .getByRole("button", { name: /^Bring back/ })
      .click();
  };
  await bringBack("last");
  await page.getByText("is back in its state of").waitFor();
  await expect.poll(() => cell(page, "B3").textContent()).toBe(was);
  stopping = stopped(page, "In progress: bring back the version");
  await bringBack("first");
  await stopping;
  await page.getByRole("dialog").getByText("was not opened: it was stopped").waitFor();
  await page.keyboard.press("Escape");
  expect(await cell(page, "B3").textContent()).toBe(was);

  // At the start, too: the next book is opened instead, and the stopped one stays as it is.
  const openFromBooks = async (title: string) => {
    await page.keyboard.press("Control+o");
    await page.locator(".book-open").filter({ hasText: title }).filter({ hasText: "changed" }).click();
    await expect.poll(() => titleOf(page)).toBe(title);
  };
  await openFromBooks("The whole county");
  const stopAtStart = () => {
    const watch = new MutationObserver(() => {
      const stop = document.querySelector<HTMLButtonElement>(".open-book .progress button");
      if (!stop) return;
      const { x, y, width, height } = stop.getBoundingClientRect();
      if (document.elementFromPoint(x + width / 2, y + height / 2) !== stop) return;
      watch.disconnect();
      stop.click();
    });
    watch.observe(document, { childList: true, subtree: true, characterData: true });
  };
  const session = await page.context().newCDPSession(page);
  await session.send("Page.enable");
  // Only for this start: other tests share the page.
  const source = `(${stopAtStart})()`;
  const { identifier } = await session.send("Page.addScriptToEvaluateOnNewDocument", { source });
  await session.send("Emulation.setCPUThrottlingRate", { rate: 12 });
  await page.reload({ waitUntil: "commit" });
  await session.send("Page.removeScriptToEvaluateOnNewDocument", { identifier });
  await page.getByText("“The whole county” was not opened: it was stopped. It is unchanged").waitFor();
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  expect(await titleOf(page)).toBe(before);
  await openFromBooks("The whole county");
  await session.detach();
});
