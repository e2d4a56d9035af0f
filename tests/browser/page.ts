/** The real page in a real browser, as the tests open it. */
import { type Browser, type BrowserContextOptions, chromium, type Locator, type Page } from "playwright-core";
import { expect, inject, onTestFinished } from "vitest";

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
  crashed: boolean;
}

const VIEWPORT = { width: 1360, height: 820 };

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

/** The page that the test before has left, with nothing of that test in it; undefined when there is none. */
async function cleared(): Promise<Page | undefined> {
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
  await page.evaluate(() => sessionStorage.clear());
  // The page writes down what it holds when it is left, so it is left before its stores are emptied.
  await page.goto("about:blank");
  const session = await page.context().newCDPSession(page);
  const origin = new URL(inject("address")).origin;
  await session.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
  await session.detach();
  return page;
}

/**
 * Opens the page at a first start, with nothing kept: what every test begins with. The test fails when
 * the page complains: of errors and warnings on the console, and of errors that nothing caught. The
 * tests of a file share one profile, emptied for each, since a profile of its own takes two seconds;
 * a test that asks for anything gets one.
 */
export async function open(opening: Opening = {}): Promise<Page> {
  const { prepare, address = inject("address"), whole = true, ...options } = opening;
  const shared = Object.keys(opening).length === 0;
  complaints = [];
  expected = undefined;
  const page = (shared && (await cleared())) || (await newPage(options));
  if (shared && page !== kept?.page) {
    const one = { page, crashed: false };
    page.on("crash", () => {
      one.crashed = true;
    });
    kept = one;
  }
  onTestFinished(async () => {
    if (!shared) await page.context().close();
    expect(complaints.filter((said) => !expected?.test(said))).toEqual([]);
  });
  await prepare?.(page, address);
  await page.goto(address);
  await page.locator(".ht_master tbody td").first().waitFor();
  if (whole) await page.locator("[data-functions=all]").waitFor({ state: "attached" });
  return page;
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
