/** Whatever fails, the rest of the page goes on, and no kept book is written over. */
import type { BrowserContext, Page, Route } from "playwright-core";
import { describe, expect, it } from "vitest";
import { blankBook } from "../../src/book/shape.ts";
import { writeBook } from "../../src/book/write.ts";
import { state, type } from "./kept.ts";
import { cell, download, expectComplaints, open } from "./page.ts";

interface Seed {
  readonly id: string;
  readonly title: string;
  readonly opened: number;
  readonly text: string;
  readonly before: string;
}

/** Puts books on the shelf as they might have been left there. */
const shelve = (page: Page, seeds: readonly Seed[]) =>
  page.evaluate(
    (all) =>
      new Promise<void>((done) => {
        const request = indexedDB.open("ellwand");
        request.onsuccess = () => {
          const tx = request.result.transaction(["spines", "leaves"], "readwrite");
          for (const { id, title, opened, text, before } of all) {
            const place = { page: 0, row: 0, column: 0 };
            tx.objectStore("spines").put({ id, title, opened, changed: opened, revision: 3, place });
            tx.objectStore("leaves").put({ id, text, before });
          }
          tx.oncomplete = () => {
            request.result.close();
            done();
          };
        };
      }),
    seeds,
  );

const textOf = (page: Page, id: string) =>
  page.evaluate(
    (one) =>
      new Promise<string>((done) => {
        const request = indexedDB.open("ellwand");
        request.onsuccess = () => {
          const found = request.result.transaction("leaves").objectStore("leaves").get(one);
          found.onsuccess = () => {
            request.result.close();
            done(found.result?.text);
          };
        };
      }),
    id,
  );

const book = (title: string) => writeBook(blankBook(title, "in", "1/8"));

describe("a book that does not open", () => {
  it("is left as it is; its earlier state opens as a book of its own, its text can be saved, another opens", async () => {
    const page = await open();
    await expect.poll(() => state(page)).toBe("Saved in this browser");
    const newer = book("The squire's cloak").replace('"ellwand": 1', '"ellwand": 99');
    const cut = book("The cook's apron").slice(0, 400);
    const later = Date.now() + 10_000;
    await shelve(page, [
      {
        id: "newer",
        title: "The squire's cloak",
        opened: later + 2,
        text: newer,
        before: book("The squire's cloak"),
      },
      { id: "cut", title: "The cook's apron", opened: later + 1, text: cut, before: cut },
    ]);
    await page.evaluate(() => sessionStorage.clear());
    await page.reload();
    const title = page.getByLabel("Title of the book");
    await expect.poll(() => title.inputValue()).toBe("The squire's cloak, earlier state");
    await page.getByText(/“The squire's cloak” was not opened: .*newer Ellwand \(version 99/).waitFor();
    await type(page, "A3", "typed in the earlier state");
    await expect.poll(() => state(page)).toBe("Saved in this browser");
    expect(await textOf(page, "newer")).toBe(newer);

    await page.keyboard.press("Control+o");
    await page.getByText(/This book does not open: .*cut off/).waitFor();
    const row = page.getByRole("listitem").filter({ hasText: "The cook's apron" });
    expect(await row.getByRole("button", { name: "Open its earlier state" }).count()).toBe(0);
    expect(
      (await download(page, () => row.getByRole("button", { name: "Save its text to a file" }).click())).text,
    ).toBe(cut);

    const { text: all } = await download(page, () =>
      page.getByRole("button", { name: "Save all books to one file" }).click(),
    );
    await page.getByText(/Saved 4 books/).waitFor();
    const { books } = JSON.parse(all);
    expect(books).toHaveLength(4);
    expect(books).toContain(cut);
    await page.getByLabel("A file to open").setInputFiles({
      name: "all.json",
      mimeType: "application/json",
      buffer: Buffer.from(all),
    });
    await page.getByText("held 4 books").waitFor();
    await expect.poll(() => page.getByText("This book does not open:").count()).toBe(4);
  });

  it("and one over which the page hung is passed over at the next start", async () => {
    const page = await open();
    await expect.poll(() => state(page)).toBe("Saved in this browser");
    const text = book("The squire's cloak");
    await shelve(page, [
      { id: "hangs", title: "The squire's cloak", opened: Date.now() + 10_000, text, before: text },
    ]);
    await page.evaluate(() => {
      sessionStorage.clear();
      const mark = { tab: "gone", at: Date.now(), stage: "book" };
      localStorage.setItem("ellwand.opening.hangs", JSON.stringify(mark));
    });
    await page.reload();
    await page.getByText(/“The squire's cloak” was not opened: the page did not finish opening it/).waitFor();
    await page.keyboard.press("Control+o");
    await page.getByRole("button", { name: "Try to open it" }).click();
    await expect.poll(() => page.getByLabel("Title of the book").inputValue()).toBe("The squire's cloak");
    await expect.poll(() => page.evaluate(() => localStorage.getItem("ellwand.opening.hangs"))).toBeNull();

    // Over what a closed tab had written down: the book opens, that is set aside.
    await page.evaluate(
      (last) => {
        const mark = { tab: "gone", at: 0, stage: "journal" };
        localStorage.setItem("ellwand.opening.hangs", JSON.stringify(mark));
        const entry = { revision: 3, from: 0, step: 1, text: last };
        localStorage.setItem("ellwand.journal.hangs.gone.1", JSON.stringify(entry));
      },
      text.replace('"rows": []', '"rows": [["russet"]]'),
    );
    await page.reload();
    await page.getByText("The last changes of “The squire's cloak” are saved as a separate book").waitFor();
    expect(await cell(page, "A1").textContent()).toBe("");
    await page.keyboard.press("Control+o");
    await page.getByRole("button", { name: /^The squire's cloak, with the last changes/ }).click();
    await expect.poll(() => cell(page, "A1").textContent()).toBe("russet");
  });
});

/** Serves a script with some of its texts made to throw while `window.failing` names the part. */
async function withFaults(context: BrowserContext, texts: Readonly<Record<string, string>>): Promise<void> {
  await context.route("**/assets/*.js", async (route: Route) => {
    const response = await route.fetch();
    let script = await response.text();
    for (const [part, text] of Object.entries(texts)) {
      const fails = (value: string) =>
        `(window.failing==="${part}"&&(()=>{throw Error("made to fail")})(),${value})`;
      const tagged = new RegExp(`(?<![\\w$])(?!(?:return|case)\\b)([\\w$]+)(?=\`${text}(?:\`|\\$\\{))`, "g");
      script = script
        .replace(tagged, (tag) => fails(tag))
        .replace(new RegExp(`(?<!\\))(?:\`${text}\`|"${text}")`, "g"), fails(`"${text}"`));
    }
    await route.fulfill({ response, body: script });
  });
}

describe("a fault in one part leaves the rest alive", () => {
  const PARTS: Record<string, string> = {
    "The top of the page": "Title of the book",
    "The list of pages": "quiet page-acts",
    "The formula of the cell": "Text or formula of the cell",
    "The grid": "grid-host",
    Drawing: "drawing-head",
    Working: "worked",
    "The list of problems": "checks",
    "The messages": "Messages",
    "The page": "open-book",
  };

  it("every part, one by one, and again whole when the fault is gone", async () => {
    const page = await open({
      prepare: (one) =>
        withFaults(one.context(), {
          ...PARTS,
          Help: "help-question",
          Books: "books-all",
          act: "Saved as ",
          cells: "cell-worked",
          seam: "half the seam",
          outlines: "outlines-pieces",
          plot: "borderTopColor",
        }),
    });
    expectComplaints(/made to fail|an answer nobody waited for|a timer's fault/);
    const failing = (part: string) => page.evaluate((one) => Object.assign(window, { failing: one }), part);
    await page.keyboard.press("Alt+l");
    for (const part of Object.keys(PARTS)) {
      await failing(part);
      // Every other part is shown anew with another page of the book.
      await page.evaluate(() => document.querySelector<HTMLElement>(".page:not([aria-current])")?.click());
      // The list of problems is shown anew when something in the book changes.
      if (part === "The list of problems") await type(page, "A22", "=1/0");
      await page.getByText(`${part} cannot be shown (made to fail)`).first().waitFor();
      await failing("");
      // Where what the part shows changes meanwhile, it is tried again without the button.
      const again = page.getByRole("button", { name: "Try again" }).first();
      await expect
        .poll(async () => {
          if (await again.isVisible()) await again.click({ timeout: 2000 }).catch(() => {});
          return page.getByText("cannot be shown").count();
        })
        .toBe(0);
      await page
        .getByRole("navigation", { name: "Pages" })
        .getByRole("button", { name: "Measure", exact: true })
        .click();
      await type(page, "A21", `after ${part}`);
      expect(await cell(page, "A21").textContent()).toBe(`after ${part}`);
    }
    await failing("Help");
    await page.keyboard.press("F1");
    await page.getByText("Help cannot be shown").waitFor();
    await page.getByRole("button", { name: "Close" }).click();
    await failing("Books");
    await page.keyboard.press("Control+o");
    await page.getByText("The list of books cannot be shown").waitFor();
    await page.getByRole("button", { name: "Close" }).click();

    // The drawing of one function: its figures, and their working, stand.
    const turnTo = (title: string) =>
      page
        .getByRole("navigation", { name: "Pages" })
        .getByRole("button", { name: title, exact: true })
        .click();
    await turnTo("Draft");
    await failing("seam");
    await cell(page, "B4").click();
    await page.getByText("was not drawn: SEAM_GIRTH failed").waitFor();
    await page.getByRole("region", { name: "Working" }).getByText("longer_than_waist").first().waitFor();
    await failing("");
    await type(page, "C4", "after the seam");
    await cell(page, "B4").click();
    await page.locator(".picture text", { hasText: "half the seam" }).first().waitFor();
    expect(await page.getByText("was not drawn").count()).toBe(0);

    await failing("outlines");
    await page.evaluate(() => {
      const dataTransfer = new DataTransfer();
      const svg = '<svg xmlns="http://www.w3.org/2000/svg"><rect width="90" height="50"/></svg>';
      dataTransfer.items.add(new File([svg], "cuff.svg"));
      document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
    });
    await page.getByText("The file cannot be shown (made to fail)").waitFor();
    await failing("");
    await page.getByRole("button", { name: "Try again" }).click();
    await page.getByRole("dialog").getByRole("button", { name: "Cancel" }).click();

    // A plot: the slider beside it goes on.
    await failing("plot");
    await page.getByRole("button", { name: "What if" }).click();
    await page.getByLabel("Change", { exact: true }).selectOption({ label: "depth" });
    await page
      .getByText(/^The plot of .* cannot be shown \(made to fail\)/)
      .first()
      .waitFor();
    await page.getByRole("slider", { name: "depth" }).press("ArrowRight");
    await page.getByRole("button", { name: "Discard" }).waitFor();
    await failing("");
    // A longer search may have tried again by itself.
    await page.evaluate(() => document.querySelector<HTMLElement>(".plots .guard button")?.click());
    await page.locator(".plots canvas").first().waitFor();
    await page.getByRole("button", { name: "Discard" }).click();
    await turnTo("Measure");

    await failing("cells");
    await type(page, "A21", "after cells");
    await page.getByText("Something in the page failed (made to fail)").waitFor();
    await failing("");
    await page.getByRole("button", { name: "Dismiss" }).first().click();
    await type(page, "A20", "more");
    expect(await cell(page, "A21").textContent()).toBe("after cells");
    // The same fault was dismissed before: another one is shown.
    await failing("act");
    await page.keyboard.press("Control+s");
    await failing("");
    await page.evaluate(() => {
      setTimeout(() => {
        Promise.reject(new Error("an answer nobody waited for"));
      });
      setTimeout(() => {
        throw new Error("a timer's fault");
      });
    });
    await page
      .getByText(/Something in the page failed \((?:an answer nobody waited for|a timer's fault)/)
      .waitFor();
    expect(await page.getByText("Something in the page failed").count()).toBe(1);
    expect((await download(page, () => page.keyboard.press("Control+s"))).text).toContain("after cells");
  });

  it("a script that can't be loaded: What if says so; without the page's own there are ways on", async () => {
    const page = await open({ prepare: (one) => one.route("**/WhatIf-*.js", (route) => route.abort()) });
    expectComplaints(/Failed to load resource|WhatIf-|page-/);
    await page.getByRole("button", { name: "What if" }).click();
    await page.getByText("What if cannot be shown").waitFor();
    await type(page, "A21", "typed beside it");
    await expect.poll(() => state(page)).toBe("Saved in this browser");

    // A version as the page keeps it; the page itself keeps the first one after a while.
    await page.evaluate(async () => {
      const stream = new Blob(["a text of Tuesday"]).stream().pipeThrough(new CompressionStream("gzip"));
      const bytes = await new Response(stream).arrayBuffer();
      await new Promise<void>((resolve, reject) => {
        const request = indexedDB.open("ellwand-versions", 1);
        request.onerror = () => reject(request.error);
        request.onupgradeneeded = () => {
          request.result.createObjectStore("versions", { keyPath: "key" }).createIndex("book", "book");
          request.result.createObjectStore("texts", { keyPath: "key" });
        };
        request.onsuccess = () => {
          const tx = request.result.transaction(["versions", "texts"], "readwrite");
          tx.objectStore("versions").put({ key: "b.1", book: "b", at: 1, bytes: bytes.byteLength });
          tx.objectStore("texts").put({ key: "b.1", how: "gzip", bytes });
          tx.oncomplete = () => {
            request.result.close();
            resolve();
          };
        };
      });
    });
    await page.route("**/page-*.js", (route) => route.abort());
    await page.reload();
    await page.getByText("The page stopped:").waitFor();
    const { text: all } = await download(page, () =>
      page.getByRole("button", { name: "Save everything in this browser to a file" }).click(),
    );
    expect(JSON.parse(all).books.join()).toContain("typed beside it");
    expect(JSON.parse(all).versions).toContainEqual(
      expect.objectContaining({ book: "b", text: "a text of Tuesday" }),
    );
    await page.unroute("**/page-*.js");
    await page.getByRole("button", { name: "Start with a blank book" }).click();
    await cell(page, "A1").waitFor();
    expect(await page.getByLabel("Title of the book").inputValue()).toBe("A new book");
    await page.keyboard.press("Control+o");
    await page.getByRole("button", { name: /^The Miller's Daughter.*changed/ }).click();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("typed beside it");
  });
});
