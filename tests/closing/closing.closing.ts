/**
 * Words are typed and the page is gone at once, in every way a page can go. No word that the page
 * said was saved may be lost; none that Enter has committed is lost when only tabs go.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { blankBook } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";
import { ARGS, CHROMIUM, serve } from "../browser/chromium.ts";
import { cell } from "../browser/page.ts";

const ROUNDS = Number(process.env.ROUNDS ?? 20);
/** The longest time between Enter and the end, in milliseconds; each round has another within it. */
const LONGEST = 150;

let address: string;
let stop: () => void;
beforeAll(async () => {
  const served = await serve();
  address = served.address;
  stop = () => served.server.close();
}, 120_000);
afterAll(() => stop());

interface Running {
  readonly browser: Browser;
  readonly process: ChildProcess;
}

/** A browser as a person starts it: with a profile that outlives it. */
async function launch(profile: string): Promise<Running> {
  rmSync(join(profile, "DevToolsActivePort"), { force: true });
  const args = [...ARGS, `--user-data-dir=${profile}`, "--remote-debugging-port=0", "about:blank"];
  const started = spawn(CHROMIUM, args, { stdio: "ignore", detached: true });
  for (;;) {
    await new Promise((done) => setTimeout(done, 100));
    try {
      const port = readFileSync(join(profile, "DevToolsActivePort"), "utf8").split("\n")[0];
      const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
      return { browser, process: started };
    } catch {
      // It is not there yet.
    }
  }
}

async function kill({ process: started, browser }: Running): Promise<void> {
  const gone = new Promise((done) => started.once("exit", done));
  process.kill(-started.pid!, "SIGKILL");
  await gone;
  await browser.close().catch(() => {});
}

async function open(browser: Browser): Promise<Page> {
  const page = await browser.contexts()[0]!.newPage();
  // The page is not put by for use without its server; that work would be in the way of the clock.
  await page.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, "serviceWorker");
  });
  await page.setViewportSize({ width: 1360, height: 900 });
  await page.goto(address);
  await cell(page, "A21").waitFor();
  return page;
}

const saved = (page: Page) =>
  expect.poll(() => page.locator(".kept").textContent()).toBe("Saved in this browser");

async function type(page: Page, word: string): Promise<void> {
  await cell(page, "A21").click();
  await page.keyboard.press("Escape");
  await page.keyboard.type(word);
  await page.keyboard.press("Enter");
}

/** The texts of all books on the shelf, once the page has taken up what it found. */
async function shelved(page: Page): Promise<string> {
  await saved(page);
  return page.evaluate(
    () =>
      new Promise<string>((done) => {
        const request = indexedDB.open("ellwand");
        request.onsuccess = () => {
          const all = request.result.transaction("leaves").objectStore("leaves").getAll();
          all.onsuccess = () => {
            request.result.close();
            done(all.result.map(({ text }) => text).join("\n"));
          };
        };
      }),
  );
}

/** Puts a book of 60,000 cells on the shelf as the one to be opened first. */
async function shelveLarge(page: Page): Promise<void> {
  const blank = blankBook("A large book", "in", "1/8");
  const rows = Array.from({ length: 20_000 }, (_, row) =>
    row < 30 ? [] : [`cell ${row}`, "16 1/2", "a note"],
  );
  const text = writeBook({
    ...blank,
    pages: blank.pages.map((one, i) => (i === 0 ? { ...one, rows } : one)),
  });
  await page.evaluate(
    (leaf) =>
      new Promise<void>((done) => {
        const request = indexedDB.open("ellwand");
        request.onsuccess = () => {
          const tx = request.result.transaction(["spines", "leaves"], "readwrite");
          const now = Date.now();
          tx.objectStore("spines").put({
            id: "large",
            title: "A large book",
            opened: now,
            changed: now,
            revision: 1,
            place: { page: 0, row: 20, column: 0 },
          });
          tx.objectStore("leaves").put({ id: "large", text: leaf, before: leaf });
          tx.oncomplete = () => {
            request.result.close();
            done();
          };
        };
      }),
    text,
  );
}

type Way = "tab closed" | "two tabs closed" | "tab crashed" | "browser killed";

/** Ends what was typed in, and gives a browser that runs. */
async function end(way: Way, pages: readonly Page[], running: Running, profile: string): Promise<Running> {
  if (way === "browser killed") {
    await kill(running);
    return launch(profile);
  }
  if (way === "tab crashed") {
    const [page] = pages;
    const session = await page!.context().newCDPSession(page!);
    const gone = page!.waitForEvent("crash");
    session.send("Page.crash").catch(() => {});
    await gone;
  }
  await Promise.all(pages.map((page) => page.close().catch(() => {})));
  return running;
}

async function lostWords(way: Way, large: boolean) {
  const profile = mkdtempSync(join(tmpdir(), "ellwand-closing-"));
  let running = await launch(profile);
  const typed: { word: string; wait: number; claimed: boolean }[] = [];
  const first = await open(running.browser);
  await saved(first);
  if (large) await shelveLarge(first);
  await first.close();
  for (let round = 0; round < ROUNDS; round += 1) {
    const pages = [await open(running.browser)];
    if (way === "two tabs closed") pages.push(await open(running.browser));
    for (const page of pages) await saved(page);
    const wait = Math.round((round * LONGEST) / ROUNDS);
    for (const [i, page] of pages.entries()) await type(page, `word-${round}-${i}-end`);
    if (wait > 0) await new Promise((done) => setTimeout(done, wait));
    // Every other round asks what the page says; asking takes time.
    const claims = await Promise.all(
      pages.map((page) => (round % 2 ? page.locator(".kept").textContent() : null)),
    );
    for (const [i] of pages.entries())
      typed.push({ word: `word-${round}-${i}-end`, wait, claimed: claims[i] === "Saved in this browser" });
    running = await end(way, pages, running, profile);
    // Each word is looked for before the next takes its cell.
    const after = await open(running.browser);
    const texts = await shelved(after);
    for (const one of typed.slice(-pages.length)) Object.assign(one, { found: texts.includes(one.word) });
    await after.close();
  }
  await kill(running);
  rmSync(profile, { recursive: true, force: true });
  const lost = typed.filter((one) => !(one as { found?: boolean }).found);
  return { typed, lost };
}

it.each<[Way, boolean]>([
  ["tab closed", false],
  ["tab closed", true],
  ["two tabs closed", false],
  ["tab crashed", false],
  ["browser killed", false],
  ["browser killed", true],
])("%s right after typing, a large book: %s", async (way, large) => {
  const { typed, lost } = await lostWords(way, large);
  const claimed = typed.filter((one) => one.claimed);
  console.log(
    `${way}, ${large ? "a book of 60,000 cells" : "a ready book"}: ${lost.length} of ${typed.length} words lost, ${lost.filter((one) => one.claimed).length} of ${claimed.length} said to be saved`,
    lost.map(({ wait }) => `${wait} ms after Enter`).join(", "),
  );
  expect(lost.filter((one) => one.claimed)).toEqual([]);
  if (way !== "browser killed") expect(lost).toEqual([]);
});
