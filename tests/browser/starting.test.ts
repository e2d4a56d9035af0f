/** Whatever the browser forbids, the page starts; and what it is built of is named. */
import { readdirSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { catalogue } from "../../functions/catalogue.ts";
import { readBook } from "../../src/book/read.ts";
import { Engine } from "../../src/engine/engine.ts";
import { layDesk } from "../../src/lay/desk.ts";
import { state, type } from "./kept.ts";
import { cell, download, expectComplaints, open } from "./page.ts";

const alert = (page: Page) =>
  page
    .getByRole("alert")
    .allTextContents()
    .then((all) => all.join(" "));

describe("the page starts", () => {
  it("where the small stores throw: the book is kept in the database", async () => {
    const page = await open({
      prepare: (one) =>
        one.addInitScript(() => {
          for (const name of ["localStorage", "sessionStorage"]) {
            Object.defineProperty(window, name, {
              get() {
                throw new DOMException("denied", "SecurityError");
              },
            });
          }
        }),
    });
    await type(page, "A21", "kept all the same");
    await expect.poll(() => state(page)).toBe("Saved in this browser");
    await page.reload();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("kept all the same");
  });

  // Each is run in the page before its own script.
  const DATABASES: [string, string, RegExp][] = [
    [
      "is missing",
      `Object.defineProperty(window, "indexedDB", { value: undefined })`,
      /this browser has no database/,
    ],
    [
      "is forbidden",
      `IDBFactory.prototype.open = () => { throw new DOMException("no", "SecurityError") }`,
      /does not let this page store anything/,
    ],
    [
      "never answers",
      `const { open } = IDBFactory.prototype;
       IDBFactory.prototype.open = function (...given) {
         const request = open.apply(this, given);
         for (const type of ["success", "error", "upgradeneeded", "blocked"])
           request.addEventListener(type, (event) => event.stopImmediatePropagation());
         return request;
       };
       const later = window.setTimeout;
       window.setTimeout = (act, time, ...given) => later(act, time > 5000 ? time / 20 : time, ...given);`,
      /did not answer within 6 seconds/,
    ],
    [
      "fails when the books are read",
      `IDBDatabase.prototype.transaction = () => { throw new DOMException("torn", "InvalidStateError") }`,
      /database failed: torn/,
    ],
  ];
  it.each(DATABASES)(
    "where the database %s: it says so, and a file can be saved",
    async (_what, script, reason) => {
      const page = await open({ prepare: (one) => one.addInitScript(script) });
      await expect.poll(() => alert(page)).toMatch(/Books cannot be saved in this browser at present/);
      await expect.poll(() => alert(page)).toMatch(reason);
      await page.getByRole("button", { name: "Dismiss" }).click();
      await type(page, "A21", "only in the file");
      await expect.poll(() => state(page)).toBe("Not saved");
      const { text } = await download(page, () => page.getByRole("button", { name: "Save a file" }).click());
      expect(text).toContain("only in the file");
    },
  );

  it("where a newer Ellwand keeps the books: it says that, and they stay as they are", async () => {
    const page = await open({
      prepare: async (one, address) => {
        await one.goto(`${address}notices.txt`);
        await one.evaluate(
          () =>
            new Promise<void>((done) => {
              const request = indexedDB.open("ellwand", 99);
              request.onupgradeneeded = () => request.result.createObjectStore("spines", { keyPath: "id" });
              request.onsuccess = () => {
                request.result.close();
                done();
              };
            }),
        );
      },
    });
    // The browser looks for an icon of the notices.
    expectComplaints(/404/);
    await expect.poll(() => alert(page)).toMatch(/a newer Ellwand keeps books in this browser/);
    await expect.poll(() => alert(page)).not.toMatch(/private/);
  });
});

/** What the page may load before its first book can be worked on, in bytes packed by gzip. It may only be made less, but for mends of what the start itself does. */
const FIRST_LOAD = 484_500;

/** Run in the page before its own script: notes when the first cell of the grid is there. */
const NOTE_GRID = `new MutationObserver((_, watch) => {
  if (!document.querySelector(".ht_master td")) return;
  window.gridAt = performance.now();
  watch.disconnect();
}).observe(document, { childList: true, subtree: true });`;

/** The addresses of the page and of what it began to load before its grid was there. */
const loadedFirst = (page: Page) =>
  page.evaluate(() => [
    location.href,
    ...performance
      .getEntriesByType("resource")
      .filter(({ startTime }) => startTime < (window as unknown as { gridAt: number }).gridAt)
      .map(({ name }) => name)
      .filter((name) => name.startsWith("http")),
  ]);

/** What can be seen of the page: its sentences before the start, the texts of its table, and where its parts stand in the window. */
const seen = (page: Page) =>
  page.evaluate(() => {
    const shown = (selector: string) =>
      [...document.querySelectorAll<HTMLElement>(selector)].filter((one) => one.checkVisibility());
    const spots = [
      ".top",
      ".brand",
      ".top button",
      ".page-now",
      ".grid-host",
      ".side",
      ".part-name",
      ".foot",
    ];
    const cells = ["td[aria-colindex='2']", "td[aria-colindex='2'] + td"].flatMap((one) =>
      shown(`:is(.first-table, .ht_master) ${one}`).slice(0, 20),
    );
    // The grid has no more headings than there is room for.
    cells.push(...shown(":is(.first-table, .ht_master) .column-heading").slice(0, 4));
    return {
      said: shown(".starting, .first-notice").map((one) => one.textContent!.replace(/\s+/g, " ").trim()),
      rows: shown(":is(.first-table, .ht_master) tbody tr").map((row) =>
        [...row.querySelectorAll("td")].map((cell) => cell.textContent),
      ),
      standing: [...spots.map((one) => shown(one)[0]), ...cells].flatMap((one, n) => {
        if (!one) return [];
        const { left, top } = one.getBoundingClientRect();
        return [[spots[n] ?? one.textContent, Math.round(left), Math.round(top)]];
      }),
    };
  });

it("the ready book can be read before the program is there, moves nothing, and little is loaded at first", async () => {
  const before: Awaited<ReturnType<typeof seen>>[] = [];
  const page = await open({
    prepare: async (one) => {
      await one.addInitScript(NOTE_GRID);
      await one.route(/assets\/start-.*\.js/, async (route) => {
        before.push(await seen(one));
        await route.continue();
      });
    },
  });
  const [first] = before;
  expect(first!.said).toEqual([
    "The program is still being loaded: this ready book can be read, but nothing can be typed yet.",
  ]);
  const reading = readBook(readFileSync("templates/peplum-bodice.json", "utf8"));
  if ("reason" in reading) throw new Error(reading.reason);
  const engine = new Engine(reading.book, layDesk);
  const { columns, rows } = reading.book.pages[0]!;
  const shown = (row: number) => columns.map((_, column) => engine.view({ page: 0, row, column }).shown);
  expect(first!.rows).toEqual(rows.map((_, row) => shown(row)));
  // The grid has the same, in the same places.
  await expect.poll(() => cell(page, "B20").textContent()).toBe(shown(19)[1]);
  const now = await seen(page);
  expect(now.said).toEqual([]);
  now.rows.slice(0, rows.length).forEach((texts, row) => {
    expect(texts).toEqual(first!.rows[row]!.slice(0, texts.length));
  });
  expect(first!.standing).toEqual(now.standing);
  const packed = await Promise.all(
    (await loadedFirst(page)).map(async (url) => {
      const { length } = gzipSync(await (await fetch(url)).bytes(), { level: 9 });
      return { url, length };
    }),
  );
  const sum = packed.reduce((all, { length }) => all + length, 0);
  expect(sum, JSON.stringify(packed)).toBeLessThan(FIRST_LOAD);
  expect(packed.filter(({ url }) => /start-.*\.(?:js|css)$/.test(url))).toHaveLength(2);
  // Who was here before has perhaps another book.
  await page.reload();
  await cell(page, "A1").waitFor();
  expect(before[1]!.rows).toEqual([]);
  expect(now.standing).toEqual(expect.arrayContaining(before[1]!.standing));
  expect(before[1]!.said[0]).toBe("Ellwand is starting: your book is opened here.");
  // The texts come with the help.
  await page.keyboard.press("F1");
  await page.getByLabel("What do you want to do?").fill("SPREAD_PER_GAP");
  const { because } = catalogue.get("SPREAD_PER_GAP")!.examples[0]!;
  await expect.poll(() => page.locator(".examples").textContent()).toContain(because);
});

/** A script that holds the functions which are loaded after the start. */
const LATE = /assets\/all-functions-.*\.js$/;

it("a formula that names a function not there yet waits for it, and is calculated when it comes", async () => {
  let come = () => {};
  const held = new Promise<void>((done) => {
    come = done;
  });
  const page = await open({
    whole: false,
    prepare: (one) =>
      one.route(LATE, async (route) => {
        await held;
        await route.continue();
      }),
  });
  await type(page, "A21", "=GATHER_WIDTH(10;2)");
  await type(page, "A22", '=ROMAN(14)&" "&BIN2DEC("101")');
  await type(page, "A23", "=SUM(1;2)");
  await expect.poll(() => cell(page, "A23").textContent()).toBe("3");
  await cell(page, "A22").click();
  await expect.poll(() => page.locator(".middle").textContent()).toContain("ROMAN is still being loaded");
  await expect.poll(() => cell(page, "A21").textContent()).toBe("");
  // The lay planner comes with them: a length of cloth is pending until then.
  const turnTo = (title: string) => page.locator("nav.pages .page", { hasText: title }).click();
  await turnTo("Cut");
  await expect.poll(() => cell(page, "B17").textContent()).toBe("…");
  come();
  await expect.poll(() => cell(page, "B17").textContent()).toMatch(/^(?:ok|check)/);
  await expect.poll(() => cell(page, "B8").textContent()).toMatch(/^\d/);
  await turnTo("Measure");
  await expect.poll(() => cell(page, "A21").textContent()).toBe("20");
  await expect.poll(() => cell(page, "A22").textContent()).toBe("XIV 5");
});

it("functions that can't be loaded are named, and come with the next formula once the server is there again", async () => {
  let away = true;
  expectComplaints(/./);
  const page = await open({
    whole: false,
    prepare: (one) => one.route(LATE, (route) => (away ? route.abort() : route.continue())),
  });
  expectComplaints(/Failed to load resource|dynamically imported/);
  const bar = page.locator(".middle");
  await type(page, "A21", "=GATHER_WIDTH(10;2)");
  await cell(page, "A21").click();
  await expect.poll(() => bar.textContent()).toContain("GATHER_WIDTH could not be loaded");
  away = false;
  await page.keyboard.press("F2");
  await page.keyboard.press("Enter");
  await expect.poll(() => cell(page, "A21").textContent()).toBe("20");
});

it("a book of functions that come late has the same problems in the page as in the engine", async () => {
  const page = await open();
  await page.keyboard.press("Control+o");
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /the whole cast/ })
    .click();
  await expect.poll(() => page.getByLabel("Title of the book").inputValue()).toMatch(/the whole cast/);
  // tests/src/engine/whole-cast.test.ts holds the engine to these five.
  await expect.poll(() => page.locator(".foot").textContent()).toContain("5 problems");
});

/** The most that the workers' own files may have, in bytes packed by gzip: a second copy of the engine alone is 240,000. */
const WORKERS = 70_000;

it("the workers are made of what the page has loaded, with no second copy of it", () => {
  const folder = new URL("../../dist/app/assets/", import.meta.url);
  const workers = readdirSync(folder).filter((name) => /^(?:[a-z]+-)*worker-.*\.js$/.test(name));
  expect(workers.length).toBeGreaterThan(3);
  const sizes = workers.map((name) => gzipSync(readFileSync(new URL(name, folder))).length);
  expect(
    sizes.reduce((all, one) => all + one),
    String(sizes),
  ).toBeLessThan(WORKERS);
  // The rest of the page's start needs a document, which no worker has.
  const imported = (name: string): string[] =>
    [...readFileSync(new URL(name, folder), "utf8").matchAll(/(?:from|import)"\.\/([^"]+\.js)"/g)].map(
      ([, file]) => file!,
    );
  const reached = new Set(workers);
  for (const name of reached) for (const file of imported(name)) reached.add(file);
  expect([...reached].filter((name) => name.startsWith("engine-"))).toHaveLength(1);
  expect([...reached].filter((name) => name.startsWith("start-"))).toEqual([]);
});

it("the licence notices of all that is bundled are reached from Books", async () => {
  const page = await open();
  await page.keyboard.press("Control+o");
  const link = page.getByRole("link", { name: "Licence notices" });
  const [notices] = await Promise.all([page.waitForEvent("popup"), link.click()]);
  const text = (await notices.locator("body").textContent())!;
  const root = new URL("../../", import.meta.url);
  const imported = ["functions", "src"].flatMap((top) =>
    readdirSync(new URL(top, root), { recursive: true, encoding: "utf8" })
      .filter((path) => /\.tsx?$/.test(path) && !/^(?:command|package|setup)\//.test(path))
      .flatMap((path) => [
        ...readFileSync(new URL(`${top}/${path}`, root), "utf8").matchAll(
          /^import (?!type)[^;]*?from "(?!virtual:)([^".][^"]*)"/gm,
        ),
      ])
      .map(([, name]) =>
        name!
          .split("/")
          .slice(0, name!.startsWith("@") ? 2 : 1)
          .join("/"),
      ),
  );
  expect(new Set(imported)).toContain("valibot");
  for (const name of ["ellwand", "chevrotain", "scheduler", ...imported]) {
    expect(text).toMatch(new RegExp(`^${name} [0-9][^ ]* \\(`, "m"));
  }
  expect(text).toMatch(/^hyperformula .*GPL-3.0-only/m);
  expect(text).toContain("GNU GENERAL PUBLIC LICENSE");
  expect(text).toContain("The Ellwand contributors");
});
