/** A book saved into the same file again. The pickers give real files of the browser's own file system. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { violations } from "./axe.ts";
import { state, type } from "./kept.ts";
import { cell, open } from "./page.ts";

/** What the stand-ins of the browser's dialogs read and count. */
interface Stage {
  pickAs: string;
  picked: number;
  asked: number;
  permission: PermissionState;
  broken: boolean;
}

const stage = (page: Page, change: Partial<Stage> = {}) =>
  page.evaluate((wanted) => {
    const now = (window as unknown as { stage: Stage }).stage;
    Object.assign(now, wanted);
    return { ...now };
  }, change);

/** Run in each tab before the page's own script. */
function standIns(): void {
  const now: Stage = { pickAs: "peplum.json", picked: 0, asked: 0, permission: "granted", broken: false };
  const pick = async (create: boolean) => {
    now.picked += 1;
    const root = await navigator.storage.getDirectory();
    return root.getFileHandle(now.pickAs, { create });
  };
  const { createWritable } = FileSystemFileHandle.prototype;
  Object.assign(window, {
    stage: now,
    showSaveFilePicker: () => pick(true),
    showOpenFilePicker: async () => [await pick(false)],
  });
  Object.assign(FileSystemFileHandle.prototype, {
    queryPermission: async () => now.permission,
    requestPermission: async () => {
      now.asked += 1;
      return now.permission === "prompt" ? "granted" : now.permission;
    },
    async createWritable(this: FileSystemFileHandle) {
      const stream = await createWritable.call(this);
      // The disk is found to be full when the new file is put in place of the old one.
      if (now.broken) stream.close = () => Promise.reject(new DOMException("no room", "QuotaExceededError"));
      return stream;
    },
  });
}

const onDisk = (page: Page, name: string) =>
  page.evaluate(async (file) => {
    const root = await navigator.storage.getDirectory();
    return (await (await root.getFileHandle(file)).getFile()).text();
  }, name);

const putOnDisk = (page: Page, name: string, text: string) =>
  page.evaluate(
    async ([file, content]) => {
      const root = await navigator.storage.getDirectory();
      const stream = await (await root.getFileHandle(file!, { create: true })).createWritable();
      await stream.write(content!);
      await stream.close();
    },
    [name, text],
  );

it("a book is saved into its own file again, and never over what is not its own without a question", async () => {
  const page = await open({ picking: true, prepare: (one) => one.context().addInitScript(standIns) });
  const said = (text: string | RegExp) => page.getByText(text).first().waitFor();
  const save = () => page.keyboard.press("Control+s");
  const press = (name: string | RegExp) => page.getByRole("button", { name }).click();

  // The first time the maker says where; afterwards the same file is written, and the page says when.
  await type(page, "A21", "first words");
  await press("Save a file");
  await said("Saved to peplum.json");
  await expect.poll(() => onDisk(page, "peplum.json")).toContain("first words");
  await expect.poll(() => page.locator(".keeping").textContent()).toMatch(/saved to peplum\.json \d+:\d\d/);
  await type(page, "A22", "second words");
  await said(/saved to peplum\.json .*, changed since/);
  await save();
  await expect.poll(() => onDisk(page, "peplum.json")).toContain("second words");
  await expect.poll(() => page.locator(".keeping").textContent()).not.toContain("changed since");
  expect((await stage(page)).picked).toBe(1);

  // After a reload the browser asks for the permission again, and the file is the same one.
  await expect.poll(() => state(page)).toBe("Saved in this browser");
  await page.reload();
  await cell(page, "A1").waitFor();
  await expect.poll(() => page.locator(".keeping").textContent()).not.toContain("changed since");
  await stage(page, { permission: "prompt" });
  await type(page, "A23", "third words");
  await save();
  await expect.poll(() => onDisk(page, "peplum.json")).toContain("third words");
  await expect.poll(() => stage(page)).toMatchObject({ picked: 0, asked: 1 });
  await stage(page, { permission: "denied" });
  await save();
  await said("has not given this page the permission");
  await press("Close");
  await stage(page, { permission: "granted" });

  // Something else changed the file: it stays as it is until the maker has decided.
  const foreign = (await onDisk(page, "peplum.json")).replace("third words", "words of another hand");
  await putOnDisk(page, "peplum.json", foreign);
  await type(page, "C21", "fourth words");
  await save();
  await said("The file was changed by something other than this book");
  await press("Compare");
  const differences = page.getByRole("region", { name: "Differences" });
  await differences.getByText("words of another hand").waitFor();
  await differences.getByText("fourth words").waitFor();
  expect(await violations(page, ".dialog")).toEqual([]);
  await expect.poll(() => onDisk(page, "peplum.json")).toBe(foreign);
  await press("Write over it");
  await said("Saved to peplum.json");
  await expect.poll(() => onDisk(page, "peplum.json")).toContain("fourth words");

  // A write that fails leaves the file and the book as they are.
  const before = await onDisk(page, "peplum.json");
  await type(page, "B22", "fifth words");
  await stage(page, { broken: true });
  await save();
  await said("there is no room for it on the disk");
  await expect.poll(() => onDisk(page, "peplum.json")).toBe(before);
  await stage(page, { broken: false });
  await press("Try again");
  await expect.poll(() => onDisk(page, "peplum.json")).toContain("fifth words");

  // A second tab that has an older state of the book asks too.
  const second = await page.context().newPage();
  await second.goto(page.url());
  await second.getByText("open in another tab too").waitFor();
  await page.bringToFront();
  await type(page, "B21", "sixth words");
  await save();
  await expect.poll(() => onDisk(page, "peplum.json")).toContain("sixth words");
  await second.bringToFront();
  await second.keyboard.press("Control+s");
  await second.getByText("Another tab saved a newer state").waitFor();
  await second.close();
  await expect.poll(() => onDisk(page, "peplum.json")).toContain("sixth words");

  // The file was deleted: the book goes to another one.
  await page.bringToFront();
  await page.evaluate(async () => (await navigator.storage.getDirectory()).removeEntry("peplum.json"));
  await save();
  await said("the file or its folder is no longer there");
  await stage(page, { pickAs: "second.json" });
  await press("Save to another file …");
  await said("Saved to second.json");
  await expect.poll(() => onDisk(page, "second.json")).toContain("sixth words");

  // A book opened from a file is saved there again.
  await putOnDisk(
    page,
    "received.json",
    (await onDisk(page, "second.json")).replace("first words", "received"),
  );
  await stage(page, { pickAs: "received.json" });
  await page.keyboard.press("Control+o");
  await press("Open a file …");
  await expect.poll(() => cell(page, "A21").textContent()).toBe("received");
  await type(page, "A22", "and changed");
  const { picked } = await stage(page);
  await save();
  await expect.poll(() => onDisk(page, "received.json")).toContain("and changed");
  expect((await stage(page)).picked).toBe(picked);
  await expect.poll(() => onDisk(page, "second.json")).not.toContain("and changed");
});
