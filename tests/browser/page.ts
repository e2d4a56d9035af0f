/** The real page in a real browser, as the tests open it. */
import { readFileSync } from "node:fs";
import { type Browser, type BrowserContextOptions, chromium, type Locator, type Page } from "playwright-core";
import { expect, inject, onTestFailed, onTestFinished } from "vitest";

/** How the page is opened. */
export interface Opening extends Omit<BrowserContextOptions, "offline"> {
  /** Whether lays are searched for automatically: only when a test asks, so that no value changes under the others. */
  readonly searching?: boolean;
  /** Whether the browser has pickers of files that can be written again; without them a file is a download. */
  readonly picking?: boolean;
  /** Whether the browser keeps the page for use without its server, as it does for makers. */
  readonly offline?: boolean;
  /** Where the page is served, if not by the server of all tests. */
  readonly address?: string;
  /** Whether to wait for the functions that the page loads after its start. */
  readonly whole?: boolean;
  /** Called before the page is loaded, with the address that will be. */
  readonly prepare?: (page: Page, address: string) => Promise<unknown>;
}

/** A page that the tests of one process share. */
interface Kept {
  readonly page: Page;
  /** Whether a book can be opened in it without loading the page again. */
  isLoaded: boolean;
  crashed: boolean;
}

const VIEWPORT = { width: 1360, height: 820 };

/** The book of a first start, as a file. */
const READY = readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url), "utf8");

let browser: Promise<Browser> | undefined;
let kept: Kept | undefined;
let complaints: string[] = [];
let expected: RegExp | undefined;

async function newPage({
  searching = false,
  picking = false,
  offline = false,
  ...options
}: Omit<Opening, "prepare" | "address" | "whole">) {
  browser ??= chromium.connect(inject("endpoint"));
  const context = await (await browser).newContext({
    viewport: VIEWPORT,
    permissions: ["clipboard-read", "clipboard-write"],
    ...options,
  });
  if (!searching)
    await context.addInitScript(() => {
      if (location.protocol === "http:") localStorage.setItem("ellwand.search-by-itself", "off");
    });
  if (!offline)
    await context.addInitScript(() => {
      Reflect.deleteProperty(Navigator.prototype, "serviceWorker");
    });
  if (!picking)
    await context.addInitScript(() => {
      Reflect.deleteProperty(window, "showSaveFilePicker");
    });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  page.on("console", (said) => {
    if (said.type() === "error" || said.type() === "warning") complaints.push(said.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  return page;
}

/** The page that the test before has left, without what that test opened beside it; undefined when there is none. */
async function left(): Promise<Page | undefined> {
  if (kept && (kept.crashed || kept.page.isClosed())) {
    await kept.page.context().close();
    kept = undefined;
  }
  if (!kept) return undefined;
  const { page } = kept;
  for (const other of page.context().pages()) if (other !== page) await other.close();
  await page.unrouteAll();
  await page.emulateMedia({ colorScheme: null, media: null });
  await page.setViewportSize(VIEWPORT);
  await page.mouse.move(0, 0);
  return page;
}

/** Empties all stores of the kept page. */
async function clear(page: Page): Promise<void> {
  await page.evaluate(() => sessionStorage.clear());
  // The page writes down what it holds when it is left, so it is left before its stores are emptied.
  await page.goto("about:blank");
  const session = await page.context().newCDPSession(page);
  const origin = new URL(inject("address")).origin;
  await session.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
  await session.detach();
}

/** What every test ends with, and what it begins with: nothing complained of. */
function watchComplaints(): void {
  complaints = [];
  expected = undefined;
  onTestFinished(() => {
    expect(complaints.filter((said) => !expected?.test(said))).toEqual([]);
  });
}

async function waitForStart(page: Page, whole: boolean): Promise<void> {
  await page.locator(".ht_master tbody td").first().waitFor();
  if (whole) await page.locator("[data-functions=all]").waitFor({ state: "attached" });
}

/**
 * Opens the page at a first start, with nothing kept. The test fails when the page complains: of
 * errors and warnings on the console, and of errors that nothing caught. The tests of a file share
 * one profile, emptied for each, since a profile of its own takes two seconds; a test that asks for
 * anything gets one.
 */
export async function open(opening: Opening = {}): Promise<Page> {
  const { prepare, address = inject("address"), whole = true, ...options } = opening;
  const shared = Object.keys(opening).length === 0;
  watchComplaints();
  const found = shared ? await left() : undefined;
  if (found) await clear(found);
  const page = found ?? (await newPage(options));
  if (shared && page !== kept?.page) {
    const one = { page, isLoaded: false, crashed: false };
    page.on("crash", () => {
      one.crashed = true;
    });
    kept = one;
  }
  if (shared) kept!.isLoaded = false;
  else onTestFinished(() => page.context().close());
  await prepare?.(page, address);
  await page.goto(address);
  await waitForStart(page, whole);
  return page;
}

/**
 * The page with the book of a first start, opened anew, for a test that needs no first start. The tests of
 * a file share one visit: the book comes as a file that is dropped on the page, and the page makes all its
 * parts anew for a book that is opened. The books of the tests before are still in the list of books. The
 * page is loaded again by the first test, and after a test that failed or that called `open`.
 */
export async function openReady(): Promise<Page> {
  onTestFailed(() => {
    if (kept) kept.isLoaded = false;
  });
  if (!kept?.isLoaded || kept.crashed || kept.page.isClosed()) {
    const page = await open();
    kept!.isLoaded = true;
    return page;
  }
  watchComplaints();
  const page = (await left())!;
  await page.evaluate(dropped, READY);
  return page;
}

/** Run in the page: drops a book on it and waits until its grid is there and no line above it says that it opens. */
function dropped(text: string): Promise<void> {
  const before = document.querySelector(".open-book");
  const dataTransfer = new DataTransfer();
  dataTransfer.items.add(new File([text], "ready.json", { type: "application/json" }));
  return new Promise((done) => {
    new MutationObserver((_, watch) => {
      if (before?.isConnected || !document.querySelector(".ht_master tbody td")) return;
      const messages = [...document.querySelectorAll(".message")];
      if (messages.some(({ textContent }) => textContent?.startsWith("Opening"))) return;
      watch.disconnect();
      done();
    }).observe(document, { childList: true, subtree: true });
    document.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
  });
}

/** What this test makes the page complain of. */
export function expectComplaints(pattern: RegExp): void {
  expected = pattern;
}

/** The file that the page saves. */
export async function download(page: Page, act: () => Promise<unknown>) {
  const [file] = await Promise.all([page.waitForEvent("download"), act()]);
  const chunks = await (await file.createReadStream()).toArray();
  const bytes = Buffer.concat(chunks);
  return { name: file.suggestedFilename(), bytes, text: bytes.toString("utf8") };
}

/** A cell of the grid by its address; one that is on the screen, on a page that is not scrolled down. */
export function cell(page: Page, address: string): Locator {
  const [, letter = "A", row = "1"] = /^([A-Z])(\d+)$/.exec(address)!;
  const inside = `tbody tr:nth-child(${row}) td[aria-colindex="${letter.charCodeAt(0) - 63}"]`;
  // A column that is kept in sight lies over its like in the table below.
  return page.locator(`.ht_master ${inside}, .ht_clone_inline_start ${inside}`).last();
}
