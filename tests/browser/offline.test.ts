/** The page without a network, and the change from one build to the next. */
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Page } from "playwright-core";
import { expect, it, onTestFinished } from "vitest";
import { builtOf, WORKER } from "../../src/setup/offline.ts";
import { builtFiles, serverOf } from "./chromium.ts";
import { state, type } from "./kept.ts";
import { cell, expectComplaints, open } from "./page.ts";

type Files = ReadonlyMap<string, Buffer>;

const listOf = (files: Files): string =>
  JSON.stringify(builtOf(new Map([...files].map(([path, bytes]) => [path.slice(1), bytes]))));

/**
 * The build that follows when a line of the page changes: the scripts have other names, and the old ones
 * are gone from the server.
 */
function nextBuild(files: Files): Map<string, Buffer> {
  const renamed = [...files.keys()].filter((path) => /^\/assets\/.*\.js$/.test(path));
  const name = (path: string) => path.split("/").at(-1)!;
  const next = new Map<string, Buffer>();
  for (const [path, bytes] of files) {
    if (!/\.(?:js|html)$/.test(path)) next.set(path, bytes);
    else {
      let text = bytes.toString().replaceAll("Save a file", "Save as a file");
      for (const old of renamed) text = text.replaceAll(name(old), name(old).replace("-", "-next-"));
      const moved = renamed.includes(path)
        ? path.replace(name(path), name(path).replace("-", "-next-"))
        : path;
      next.set(moved, Buffer.from(text));
    }
  }
  const worker = next.get(`/${WORKER}`)!.toString();
  const own = /\{"build":"[^"]*","files":\{[^}]*\}\}/;
  expect(worker).toMatch(own);
  next.set(`/${WORKER}`, Buffer.from(worker.replace(own, () => listOf(next))));
  return next;
}

const listening = async (server: Server, port: number): Promise<number> => {
  await new Promise<void>((done) => server.listen(port, "127.0.0.1", done));
  return (server.address() as AddressInfo).port;
};

async function stopped(server: Server): Promise<void> {
  const over = new Promise((done) => server.close(done));
  server.closeAllConnections();
  await over;
}

/** The builds that the browser has whole. */
const whole = (page: Page) =>
  page.evaluate(async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith("ellwand.build."));
    const marks = await Promise.all(
      names.map(async (name) => (await caches.open(name)).match("./whole-build")),
    );
    return names.filter((_, i) => marks[i]);
  });

/** The page works, not its frame alone, and is of the build whose button is called so. */
async function works(page: Page, save: "Save a file" | "Save as a file"): Promise<void> {
  await cell(page, "A1").waitFor();
  await page.getByRole("button", { name: save }).waitFor();
}

/** Opens a part of the page that is loaded when it is first used. */
async function lookAtVersions(page: Page): Promise<void> {
  await page.keyboard.press("Control+o");
  await page
    .getByRole("button", { name: /^Earlier versions/ })
    .first()
    .click();
  await page.getByText("A version is kept before each large change").waitFor();
  await page.keyboard.press("Escape");
}

// The browser decides when a newer build takes over, at times only after minutes: it is run when asked for.
it.skipIf(!process.env.WHOLE)(
  "once loaded the page works without its server, and a newer build takes its place whole at the next start",
  async () => {
    const first = builtFiles();
    const missing: string[] = [];
    const serve = (files: Files) => serverOf(files, { asIs: true, onMissing: (path) => missing.push(path) });
    let server = serve(first);
    const port = await listening(server, 0);
    onTestFinished(() => stopped(server));
    const address = `http://127.0.0.1:${port}/`;
    const page = await open({ offline: true, address });
    // What the server can't answer while it is stopped is on the console of the browser.
    expectComplaints(/Failed to load resource|service-worker\.js|ERR_CONNECTION/);

    // Everything is kept in the background, parts that were never used too.
    await expect.poll(() => whole(page)).toHaveLength(1);
    await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
    expect(await page.getByText("A new version of Ellwand is ready").count()).toBe(0);
    await type(page, "A21", "typed with the server");
    await expect.poll(() => state(page)).toBe("Saved in this browser");
    await stopped(server);
    await page.reload();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("typed with the server");
    await lookAtVersions(page);
    await type(page, "A22", "typed without it");
    await expect.poll(() => state(page)).toBe("Saved in this browser");
    await page.reload();
    await expect.poll(() => cell(page, "A22").textContent()).toBe("typed without it");

    // A build that is not whole on the server is not taken.
    const second = nextBuild(first);
    const torn = new Map(second);
    const start = [...second.keys()].find((path) => path.startsWith("/assets/start-next-"))!;
    torn.set(start, second.get(start)!.subarray(0, 1000));
    server = serve(torn);
    await listening(server, port);
    const before = await whole(page);
    await page.reload();
    await works(page, "Save a file");
    expect(await whole(page)).toEqual(before);
    await stopped(server);

    // A newer build while a cell is being typed in: the page says so, and goes on with its own parts.
    server = serve(second);
    await listening(server, port);
    await cell(page, "C21").click();
    await page.keyboard.type("half typed");
    // The tab is looked at again and again: what keeps the page begins a while after the page itself.
    const looked = async () => {
      await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
      return page.getByText("A new version of Ellwand is ready").count();
    };
    await expect.poll(looked, { interval: 500 }).toBe(1);
    expect(await page.locator("textarea.handsontableInput, .handsontableInput").first().inputValue()).toBe(
      "half typed",
    );
    await page.keyboard.press("Enter");
    await lookAtVersions(page);
    expect(await page.getByRole("button", { name: "Save a file" }).count()).toBe(1);

    // A second tab starts with the newer build; neither writes over the other.
    const tab = await page.context().newPage();
    await tab.goto(address);
    await works(tab, "Save as a file");
    await tab.getByText("open in another tab too").waitFor();
    await expect.poll(() => cell(tab, "C21").textContent()).toBe("half typed");
    await page.bringToFront();
    await lookAtVersions(page);
    expect(await whole(page)).toHaveLength(2);
    await tab.close();

    // The next start of the first tab is the newer build; the older one goes.
    await page.reload();
    await works(page, "Save as a file");
    expect(await cell(page, "C21").textContent()).toBe("half typed");
    await expect.poll(() => whole(page)).toHaveLength(1);
    await stopped(server);
    await page.reload();
    await works(page, "Save as a file");
    await lookAtVersions(page);
    expect(missing).toEqual([]);
  },
);
