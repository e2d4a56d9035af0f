/**
 * Somebody types, undoes and redoes while the page saves, something goes wrong, and at a random moment
 * the tab, the page or the browser is gone. Afterwards every text that the page said was saved must
 * be on the shelf, or one that came after it; where the browser lives on, every text that a key had
 * put into the book as well.
 */
import type { Page, Worker } from "playwright-core";
import { Random } from "../attack/random.ts";
import { cell } from "../browser/page.ts";
import type { Profile } from "./profile.ts";
import { onShelf } from "./shelf.ts";
import { saved, Tab } from "./tab.ts";

/** How the work ends. */
export const WAYS = ["tab closed", "page left", "page crashed", "browser killed"] as const;
export type Way = (typeof WAYS)[number];

/** What goes wrong before it ends. */
export const TROUBLES = ["none", "two tabs", "full disk", "worker dies", "clock goes back"] as const;
export type Trouble = (typeof TROUBLES)[number];

export interface Round {
  readonly way: Way;
  readonly trouble: Trouble;
  /** How many times the page said that something was saved. */
  readonly claims: number;
  /** What was lost, in a sentence for each tab that lost something. */
  readonly lost: readonly string[];
}

/** The row of the cell in which the tabs type. */
const ROW = 20;
/** The most acts before the end, and the longest time after the last of these, in milliseconds; work goes on until the end. */
const ACTS = 6;
const LONGEST = 150;
/** How long what a closed tab had written down may take to be on the shelf, in milliseconds. */
const SOON = 20_000;

/** Opens the page in the profile's browser; where it goes on with what was typed before. */
export async function openIn(profile: Profile, address: string): Promise<Page> {
  const browser = await profile.browser();
  const page = await browser.contexts()[0]!.newPage();
  page.setDefaultTimeout(20_000);
  page.on("dialog", (dialog) => dialog.accept().catch(() => {}));
  await page.addInitScript(() => {
    // The page is not kept for use without its server: that work would be in the way of the clock.
    Reflect.deleteProperty(Navigator.prototype, "serviceWorker");
    // The clock goes back by as much as the test says.
    const RealDate = Date;
    const back = { by: 0 };
    Object.assign(window, { clock: back });
    window.Date = class extends RealDate {
      constructor(...args: unknown[]) {
        if (args.length === 0) super(RealDate.now() - back.by);
        else super(...(args as [number]));
      }
      static override now = () => RealDate.now() - back.by;
    } as DateConstructor;
  });
  await page.setViewportSize({ width: 1360, height: 900 });
  await page.goto(address);
  await cell(page, "A21").waitFor();
  await saved(page);
  return page;
}

/** The workers that search for lays; none where everything has been searched for. */
async function workersOf(page: Page): Promise<readonly Worker[]> {
  if (page.workers().length === 0) await page.waitForEvent("worker", { timeout: 2000 }).catch(() => {});
  return page.workers();
}

/** Makes something go wrong in a page, now. */
async function spoil(page: Page, trouble: Trouble): Promise<void> {
  if (trouble === "full disk") {
    const session = await page.context().newCDPSession(page);
    await session.send("Storage.overrideQuotaForOrigin", {
      origin: new URL(page.url()).origin,
      quotaSize: 1,
    });
  }
  if (trouble === "worker dies")
    await Promise.all(
      (await workersOf(page)).map((worker) => worker.evaluate(() => self.close()).catch(() => {})),
    );
  if (trouble === "clock goes back")
    await page.evaluate(() =>
      Object.assign((window as unknown as { clock: object }).clock, { by: 86_400_000 }),
    );
}

/** Works in all tabs, one act after the other, until the pages are gone; `enough` is called after so many acts. */
async function work(
  tabs: readonly Tab[],
  random: Random,
  acts: number,
  enough: () => void,
  over: AbortSignal,
): Promise<void> {
  try {
    for (let done = 0; !over.aborted; done += 1) {
      if (done >= acts) enough();
      await tabs[done % tabs.length]!.act(random);
    }
  } catch {
    // The page is gone.
    enough();
  }
}

async function end(way: Way, pages: readonly Page[], profile: Profile): Promise<void> {
  if (way === "browser killed") return profile.kill();
  if (way === "page left")
    await Promise.all(pages.map((page) => page.goto("about:blank", { waitUntil: "commit" }).catch(() => {})));
  if (way === "page crashed")
    await Promise.all(
      pages.map(async (page) => {
        const session = await page.context().newCDPSession(page);
        const gone = page.waitForEvent("crash", { timeout: 5000 }).catch(() => {});
        session.send("Page.crash").catch(() => {});
        await gone;
      }),
    );
  await Promise.all(pages.map((page) => page.close().catch(() => {})));
}

/** Opens a book of which something is written down that the shelf has not taken: it is taken up when the book is opened. */
async function openWritten(page: Page): Promise<void> {
  const isAnother = await page.evaluate(() => {
    const open = sessionStorage.getItem("ellwand.open");
    const written = Object.keys(localStorage).filter((key) => key.startsWith("ellwand.journal."));
    const other = written.map((key) => key.split(".")[2]!).find((id) => id !== open);
    if (other !== undefined) sessionStorage.setItem("ellwand.open", other);
    return other !== undefined;
  });
  if (!isAnother) return;
  await page.reload();
  await cell(page, "A21").waitFor();
  await saved(page);
}

/** One round, which begins in an open page and leaves another one open. */
export async function round(
  number: number,
  way: Way,
  trouble: Trouble,
  { profile, address, page, seed }: { profile: Profile; address: string; page: Page; seed: number },
): Promise<{ round: Round; page: Page }> {
  const random = new Random(seed + number * 7919);
  const tabs = [new Tab(page, `word-${number}-a`)];
  if (trouble === "two tabs") tabs.push(new Tab(await openIn(profile, address), `word-${number}-b`));
  for (const tab of tabs) await tab.begin(random);
  const [acts, lasting] = [random.between(1, ACTS) * tabs.length, random.below(LONGEST)];
  const spoilt = spoil(page, trouble);
  if (random.chance(0.5)) await spoilt;
  const over = new AbortController();
  let working: Promise<void> | undefined;
  await new Promise<void>((enough) => {
    working = work(tabs, random, acts, enough, over.signal);
  });
  await new Promise((done) => setTimeout(done, lasting));
  await spoilt.catch(() => {});
  // A browser that is killed may lose what it has not said to be saved.
  over.abort();
  const committed = tabs.map((tab) => (way === "browser killed" ? -1 : tab.committed));
  await end(
    way,
    tabs.map((tab) => tab.page),
    profile,
  );
  await working;
  const after = await openIn(profile, address);
  // A tab that has just been closed counts as open for a moment: what it wrote down is taken up when it is gone.
  const until = Date.now() + SOON;
  let losing: readonly Tab[];
  do {
    const there = await onShelf(after, ROW);
    losing = tabs.filter((tab, i) => {
      const must = tab.mustHave(committed[i]);
      return must.length > 0 && !there.some((text) => must.includes(text) || tab.isHalfTyped(text));
    });
    if (losing.length > 0) await openWritten(after);
  } while (losing.length > 0 && Date.now() < until);
  const lost = losing.map(
    (tab) =>
      `${tab.mustHave(committed[tabs.indexOf(tab)]).join(" or ")} (${way}, ${trouble}, ${acts} acts and ${lasting} ms)`,
  );
  const claims = tabs.reduce((sum, tab) => sum + tab.claims, 0);
  return { round: { way, trouble, claims, lost }, page: after };
}
