/** What takes longer than a second says so and can be stopped; a worker whose program does not come is a sentence. */
import { readFileSync } from "node:fs";
import type { Page, Route } from "playwright-core";
import { expect, it } from "vitest";
import { blankBook } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";
import { state, type as typeIn } from "./kept.ts";
import { cell, download, expectComplaints, open } from "./page.ts";

const ready = readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url));

/** A book of 20,000 rows, as a file. */
function large() {
  const blank = blankBook("The whole shire", "cm", "1 mm");
  const rows = Array.from({ length: 20_000 }, (_, row) => [
    `role ${row + 1}`,
    "",
    `lives in house ${row} beyond the mill`,
  ]);
  const pages = blank.pages.map((page, i) => (i === 0 ? { ...page, rows } : page));
  const buffer = Buffer.from(writeBook({ ...blank, pages }));
  return { name: "shire.json", mimeType: "application/json", buffer };
}

/** The numbers of the parts in which the browser keeps the text of the one long book. */
const partsKept = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<number[]>((done) => {
        const request = indexedDB.open("ellwand");
        request.onsuccess = () => {
          const all = request.result.transaction("leaves").objectStore("leaves").getAll();
          all.onsuccess = () => {
            request.result.close();
            done(all.result.map(({ text }) => text).find((text) => typeof text === "object") ?? []);
          };
        };
      }),
  );

/** Notes from now on what the page says that it is busy with; the function that is returned gives all of it. */
async function busyWith(page: Page): Promise<() => Promise<string>> {
  await page.evaluate(() => {
    const said = new Set<string>();
    Object.assign(window, { said });
    new MutationObserver(() => {
      for (const one of document.querySelectorAll(".progress")) said.add(one.textContent ?? "");
    }).observe(document.body, { childList: true, subtree: true });
  });
  return () => page.evaluate(() => [...(window as unknown as { said: Set<string> }).said].join("; "));
}

/** The workers that do long work, by the names of their files. */
const WORKERS = "{book-work-worker,question-worker,table-worker,print-worker}";

/** Holds back the program of a worker until the function that is returned lets it come. */
async function heldBack(page: Page, worker: string): Promise<() => Promise<void>> {
  const path = `**/assets/${worker}-*.js`;
  const waiting: Route[] = [];
  let free = false;
  await page.route(path, (route) => {
    if (free) return route.continue();
    waiting.push(route);
  });
  return async () => {
    free = true;
    for (const route of waiting.splice(0)) await route.continue().catch(() => {});
  };
}

/** Asks what matters for a calculated cell of the draft. */
async function whatMatters(page: Page): Promise<void> {
  await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
  await cell(page, "B11").click();
  await page.getByRole("button", { name: "What if" }).click();
  await page.getByRole("tab", { name: "What matters" }).click();
}

const stop = (page: Page) => page.getByRole("button", { name: "Stop", exact: true });

it("export, comparison, a large file and what-if answers say how long they take, and stop", async () => {
  const page = await open();
  const free = await heldBack(page, WORKERS);

  const exporting = async () => {
    await page.getByRole("button", { name: /^Change the page/ }).click();
    await page.getByRole("menuitem", { name: "Save the book as a spreadsheet, .xlsx" }).click();
  };
  await exporting();
  await page.getByText("Writing the book as a spreadsheet …").waitFor();
  await stop(page).click();
  await page.getByText("The spreadsheet was not written: it was stopped").waitFor();

  await page.keyboard.press("Control+o");
  const file = { name: "ready.json", mimeType: "application/json", buffer: ready };
  await page.getByLabel("A file to compare with").setInputFiles(file);
  await page.getByText("Comparing …").waitFor();
  await page.getByText(/^ ?[1-9]\d* s ?$/).waitFor();
  await stop(page).click();
  await page.getByText("The comparison was stopped.").waitFor();
  const shire = large();
  await page.getByLabel("A file to open").setInputFiles(shire);
  await page.getByText("Reading “shire.json” …").waitFor();
  await stop(page).click();
  await page.getByText("“shire.json” was not opened: it was stopped").waitFor();

  await whatMatters(page);
  await page.getByText("Calculating …").waitFor();
  await stop(page).click();
  await page.getByText("The calculation was stopped.").waitFor();
  await free();
  await page.getByRole("button", { name: "Calculate again" }).press("Enter");
  await page.getByText(/How much .* changes when each measurement is/).waitFor();

  const saved = await download(page, exporting);
  expect(saved.name).toMatch(/\.xlsx$/);
  await page.getByText("67 formulas stay alive").waitFor();

  await page.keyboard.press("Control+o");
  await page.getByLabel("A file to open").setInputFiles(shire);
  await expect.poll(() => page.getByLabel("Title of the book").inputValue()).toBe("The whole shire");
  await typeIn(page, "A5", "typed in a large book");
  await expect.poll(() => state(page)).toBe("Saved in this browser");
  const first = await partsKept(page);
  const busy = await busyWith(page);
  await cell(page, "B3").click();
  // An undo that follows at once waits for the paste.
  await page.evaluate(() => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", Array(1600).fill("12 1/2").join("\n"));
    const how = { bubbles: true, cancelable: true };
    document.activeElement!.dispatchEvent(new ClipboardEvent("paste", { clipboardData, ...how }));
    document.body.dispatchEvent(new KeyboardEvent("keydown", { key: "z", ctrlKey: true, ...how }));
  });
  await expect.poll(busy).toMatch(/Pasting 1600 cells …(.*)Undo: paste 1600 cells/);
  await expect.poll(() => cell(page, "B6").textContent()).toBe("");
  // A row that is moved down twice at once comes two rows down, and both steps are taken back.
  await cell(page, "A8").click();
  await page.keyboard.press("Alt+Shift+ArrowDown");
  await page.keyboard.press("Alt+Shift+ArrowDown");
  await expect.poll(() => cell(page, "A10").textContent()).toBe("role 8");
  expect(await busy()).toContain("In progress: move a row …");
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await expect.poll(() => cell(page, "A8").textContent()).toBe("role 8");
  const table = await download(page, async () => {
    await page.getByRole("button", { name: /^Change the page/ }).click();
    await page.getByRole("menuitem", { name: "Save as CSV, as shown" }).click();
  });
  expect(table.text).toContain("typed in a large book");
  expect(await busy()).toContain("as CSV …");

  // Of a large book only the parts that changed are kept anew, and a reload puts the parts together.
  await typeIn(page, "A6", "typed after it");
  await expect.poll(() => state(page)).toBe("Saved in this browser");
  expect(first.length).toBeGreaterThan(40);
  const anew = (await partsKept(page)).filter((part) => !first.includes(part));
  expect(anew.length).toBeLessThan(10);
  await page.reload();
  await expect.poll(() => cell(page, "A6").textContent()).toBe("typed after it");
  expect(await cell(page, "A5").textContent()).toBe("typed in a large book");
});

it("a worker whose program does not come is one sentence, the page goes on, and it comes when asked again", async () => {
  const page = await open();
  expectComplaints(/Failed to load resource|net::ERR_FAILED/);
  await page.route(`**/assets/${WORKERS}-*.js`, (route) => route.abort());
  const NOT_LOADED = /a part of the page's program could not be loaded/;
  await page.getByRole("button", { name: "Change the page Measure" }).click();
  await page.getByRole("menuitem", { name: "Save the book as a spreadsheet, .ods" }).click();
  await page.getByText(/could not be saved as a spreadsheet/).waitFor();

  await page.keyboard.press("Control+o");
  const file = { name: "ready.json", mimeType: "application/json", buffer: ready };
  await page.getByLabel("A file to compare with").setInputFiles(file);
  await page.getByText(/These books can't be compared/).waitFor();
  await page.unrouteAll();
  const keyboardIsOnThePage = () => page.evaluate(() => document.activeElement === document.body);
  await page.getByRole("button", { name: "Compare again" }).press("Enter");
  await page.getByText(/are the same\./).waitFor();
  await expect.poll(keyboardIsOnThePage).toBe(false);
  await page.route(`**/assets/${WORKERS}-*.js`, (route) => route.abort());
  const table = { name: "cast.csv", mimeType: "text/csv", buffer: Buffer.from("role;waist\nmiller;70") };
  await page.getByLabel("A file to open").setInputFiles(table);
  await page
    .getByText(/“cast.csv” was not opened/)
    .filter({ hasText: NOT_LOADED })
    .waitFor();
  await page.keyboard.press("Escape");

  await page.keyboard.press("Alt+p");
  await page.getByText(NOT_LOADED).waitFor();
  await page.keyboard.press("Escape");

  await whatMatters(page);
  await page.getByText(NOT_LOADED).waitFor();
  expect(await cell(page, "A1").textContent()).not.toBe("");
  await page.unrouteAll();
  await page.getByRole("button", { name: "Calculate again" }).press("Enter");
  await page.getByText(/How much .* changes when each measurement is/).waitFor();
  await expect.poll(keyboardIsOnThePage).toBe(false);
});

/** A promise, and what fulfils it. */
function openPromise() {
  let resolve = () => {};
  const promise = new Promise<void>((done) => {
    resolve = done;
  });
  return { promise, resolve: () => resolve() };
}

/** Has a worker's own program do something else when it is asked for the first time. What is returned waits until the worker has it. */
async function instead(page: Page, worker: string, what: string): Promise<() => Promise<void>> {
  const { promise, resolve } = openPromise();
  await page.route(`**/assets/${worker}-*.js`, async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: `${await response.text()}\n;self.onmessage = () => {${what}};` });
    resolve();
  });
  return () => promise;
}

/** The four kinds of long work, each asked for, told of in a sentence, and begun again by its button. */
async function askAgain(page: Page, { sentence, calculate, compare, read, print }: Silenced): Promise<void> {
  const again = (name: string) => page.getByRole("button", { name, exact: true }).click();
  let isThere = async () => {};
  const silence = async (worker: string) => {
    await page.unrouteAll();
    isThere = await instead(page, worker, sentence.what);
  };
  const told = async () => {
    await isThere();
    await sentence.wait();
    await page.getByText(sentence.says).first().waitFor();
    await page.unrouteAll();
  };
  await silence("book-work-worker");
  await page.keyboard.press("Control+o");
  const file = { name: "ready.json", mimeType: "application/json", buffer: ready };
  await page.getByLabel("A file to compare with").setInputFiles(file);
  await page.getByText("Comparing …").waitFor();
  await told();
  await again(compare);
  await page.getByText(/are the same\./).waitFor();

  await silence("table-worker");
  const table = { name: "cast.csv", mimeType: "text/csv", buffer: Buffer.from("role;waist\nmiller;70") };
  await page.getByLabel("A file to open").setInputFiles(table);
  await page.getByText("The file is being read …").waitFor();
  await told();
  await again(read);
  await page.getByRole("button", { name: "Make a book of it" }).waitFor();
  await page.keyboard.press("Escape");

  await silence("print-worker");
  await page.keyboard.press("Alt+p");
  await page.getByText("The sheets are being counted …").waitFor();
  await told();
  await again(print);
  await expect.poll(() => page.getByRole("button", { name: "Save the PDF" }).isEnabled()).toBe(true);
  await page.keyboard.press("Escape");

  await silence("question-worker");
  await whatMatters(page);
  await page.getByText("Calculating …").waitFor();
  await told();
  await again(calculate);
  await page.getByText(/How much .* changes when each measurement is/).waitFor();
}

interface Silenced {
  readonly sentence: {
    /** What the worker does instead of its work. */
    readonly what: string;
    readonly says: RegExp;
    readonly wait: () => Promise<unknown>;
  };
  /** The names of the buttons. */
  readonly calculate: string;
  readonly compare: string;
  readonly read: string;
  readonly print: string;
}

it("a worker that ends without a word is a sentence where it was waited for, and the work can be begun again", async () => {
  const page = await open();
  await askAgain(page, {
    sentence: {
      what: "setTimeout(() => self.close(), 2000)",
      says: /the worker ended without a word, perhaps because the browser had no more memory for it/,
      wait: async () => {},
    },
    calculate: "Calculate again",
    compare: "Compare again",
    read: "Try again",
    print: "Try again",
  });
});

it("of a worker that is silent for a minute it is said that it may be at work or stuck, and the work can be begun again", async () => {
  const page = await open({ prepare: (page) => page.clock.install() });
  const name = "Try again";
  await askAgain(page, {
    sentence: {
      what: "",
      says: /Nothing has been heard of it for a minute: it may still be at work on a long step, or it may be stuck/,
      wait: async () => {
        // The work begins a moment after it is said to.
        await page.clock.fastForward(1000);
        await page.clock.fastForward(50_000);
        expect(await page.getByText("Nothing has been heard of it").count()).toBe(0);
        await page.clock.fastForward(11_000);
      },
    },
    calculate: name,
    compare: name,
    read: name,
    print: name,
  });
});

it("a part that can't be loaded says so in its own place, and Try again loads it", async () => {
  const page = await open();
  expectComplaints(/Failed to load resource|net::ERR_FAILED|dynamically imported module/);
  const tryAgain = () => page.getByRole("button", { name: "Try again" }).click();

  await page.route("**/assets/Versions-*.js", (route) => route.abort());
  await page.keyboard.press("Control+o");
  await page.getByRole("button", { name: /^Earlier versions of/ }).click();
  await page.getByText("The list of earlier versions cannot be shown").waitFor();
  // The books around it are still there.
  await page.getByText("Begin with a ready book").waitFor();
  await page.unroute("**/assets/Versions-*.js");
  await tryAgain();
  await page.getByRole("region", { name: "Earlier versions" }).waitFor();
  await page.keyboard.press("Escape");

  await page.route("**/assets/PhotoForm-*.js", (route) => route.abort());
  await cell(page, "A21").click({ button: "right" });
  await page.getByRole("menuitem", { name: "Photograph in A21…" }).click();
  await page.getByText("The photograph cannot be shown").waitFor();
  // The grid under it goes on.
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await typeIn(page, "A21", "typed after it");
  expect(await cell(page, "A21").textContent()).toBe("typed after it");
});
