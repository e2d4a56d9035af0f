/** Earlier versions of a book: kept while the maker works, looked at, compared, named, brought back, deleted with it. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { violations } from "./axe.ts";
import { state, type } from "./kept.ts";
import { cell, download, open } from "./page.ts";

const textOf = (page: Page) =>
  download(page, () => page.keyboard.press("Control+s")).then(({ text }) => text);

/** What the database of versions holds. */
const kept = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<{ book: string; at: number; before: string; name?: string }[]>((done) => {
        const request = indexedDB.open("ellwand-versions");
        request.onupgradeneeded = () => request.transaction!.abort();
        request.onerror = () => done([]);
        request.onsuccess = () => {
          const all = request.result.transaction("versions").objectStore("versions").getAll();
          all.onsuccess = () => {
            request.result.close();
            done(all.result);
          };
        };
      }),
  );

it("a version is kept before each large act, and brought back it is the book as it was", async () => {
  const page = await open();
  const press = (name: string | RegExp) => page.getByRole("button", { name }).first().click();
  const list = page.getByRole("region", { name: "Earlier versions" });
  const show = async () => {
    await page.keyboard.press("Control+o");
    await press(/^Earlier versions/);
    await list.getByRole("listitem").first().waitFor();
  };
  const first = await textOf(page);
  await type(page, "A21", "for the last scene");
  await expect.poll(() => kept(page)).toMatchObject([{ before: "type in A21" }]);
  // A second change at once is near enough to the first; another unit is a large act.
  await type(page, "A22", "and the first");
  const inches = await textOf(page);
  await page.getByRole("combobox", { name: "Unit" }).selectOption("cm");
  await expect.poll(() => kept(page)).toHaveLength(2);
  expect((await kept(page)).map(({ before }) => before).sort()).toEqual([
    "measure in centimetres",
    "type in A21",
  ]);
  const centimetres = await textOf(page);

  await show();
  await list.getByText(/before: type in A21; changed since then: \d+ cells/).waitFor();
  await list.getByText(/before: measure in centimetres; changed since then: .*setting/).waitFor();
  await press(/^Look at the version/);
  const table = list.getByRole("region", { name: "The version's page Measure" });
  await table.getByRole("cell", { name: "and the first" }).waitFor();
  expect(await violations(page, ".dialog")).toEqual([]);
  await list.getByRole("combobox", { name: "Page" }).selectOption("Cut");
  await list.getByRole("region", { name: "The version's page Cut" }).waitFor();
  const oldest = list.getByRole("listitem").last();
  await oldest.getByRole("button", { name: /^Compare/ }).click();
  await list.getByRole("region", { name: "Differences" }).getByText("for the last scene").waitFor();
  await oldest.getByRole("button", { name: /^Name/ }).click();
  await page.keyboard.type("before the last scene");
  await page.keyboard.press("Enter");
  await list.getByText("before the last scene", { exact: true }).waitFor();
  expect(await violations(page, ".dialog")).toEqual([]);

  // Brought back: the text exactly, one undo, and the present is a version too.
  await oldest.getByRole("button", { name: /^Bring back/ }).click();
  await page.getByText("is back in its state of").waitFor();
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await expect.poll(() => textOf(page)).toBe(first);
  await expect.poll(() => kept(page)).toHaveLength(3);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect.poll(() => textOf(page)).toBe(centimetres);
  await show();
  await press("Bring back the version before the last scene");
  await page.getByText("is back in its state of").waitFor();
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await show();
  await list
    .getByRole("listitem")
    .filter({ hasText: "before: measure in centimetres" })
    .getByRole("button", { name: /^Open as a copy/ })
    .click();
  await expect.poll(() => page.getByLabel("Title of the book").inputValue()).toMatch(/, version of /);
  expect((await textOf(page)).replace(/, version of [^"]*/, "")).toBe(inches);

  // Deleted permanently, a book takes its versions along.
  await page.keyboard.press("Control+o");
  await press(/^Move to bin The Miller's Daughter of Withy Green: peplums$/);
  await page.getByText("Bin: 1 book").click();
  await press(/^Delete … The Miller's Daughter/);
  await press(/^Delete permanently The Miller's Daughter/);
  await expect.poll(() => kept(page)).toEqual([]);
});

it("where the browser's storage is full, versions make room for the book and the page says so", async () => {
  const page = await open();
  await type(page, "A21", "before it is full");
  await expect.poll(() => kept(page)).toHaveLength(1);
  await expect.poll(() => state(page)).toBe("Saved in this browser");
  // 40 old versions of another book; the books' store has room again once fifteen of them are deleted.
  await page.evaluate(async () => {
    const request = indexedDB.open("ellwand-versions");
    const db = await new Promise<IDBDatabase>((done) => {
      request.onsuccess = () => done(request.result);
    });
    const tx = db.transaction("versions", "readwrite");
    for (let i = 0; i < 40; i += 1)
      tx.objectStore("versions").put({ key: `old${i}`, book: "another", at: 1000 + i, before: "", bytes: 1 });
    await new Promise((done) => {
      tx.oncomplete = done;
    });
    db.close();
    let missing = 15;
    const { put, delete: remove } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.delete = function (key) {
      if (this.name === "versions") missing -= 1;
      return remove.call(this, key);
    };
    IDBObjectStore.prototype.put = function (...given) {
      if (this.name === "leaves" && missing > 0) throw new DOMException("no room", "QuotaExceededError");
      return put.apply(this, given);
    };
  });
  await type(page, "A22", "typed while it is full");
  await page.getByText(/storage is full: .* deleted to make room for your books/).waitFor();
  await expect.poll(() => state(page)).toBe("Saved in this browser");
  // A quarter at a time, the oldest first.
  const left = await kept(page);
  expect(left.filter(({ book }) => book === "another").map(({ at }) => at)[0]).toBe(1019);
  expect(left.some(({ before }) => before === "type in A21")).toBe(true);
  await page.reload();
  await expect.poll(() => cell(page, "A22").textContent()).toBe("typed while it is full");
});
