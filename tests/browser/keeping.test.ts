/** Books in the browser and in files: nothing that was typed is lost, nothing broken is opened. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { beforeEach, describe, expect, it } from "vitest";
import { violations } from "./axe.ts";
import { cell, download, open } from "./page.ts";

const ready = readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url), "utf8");

let page: Page;

beforeEach(async () => {
  page = await open();
});

const title = (of = page) => of.getByLabel("Title of the book");
const kept = (of = page) =>
  expect.poll(() => of.locator(".kept").textContent()).toBe("Saved in this browser");

/** Types into A21 of the page that is shown; row 21 of the ready book's first page is blank. */
async function note(text: string, of = page): Promise<void> {
  await cell(of, "A21").click();
  // A second click may have opened the editor.
  await of.keyboard.press("Escape");
  await of.keyboard.type(text);
  await of.keyboard.press("Enter");
}

async function openFile(name: string, text: string): Promise<void> {
  await page.keyboard.press("Control+o");
  await page
    .getByLabel("A file to open")
    .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

async function again(of = page): Promise<void> {
  await of.reload();
  await cell(of, "A1").waitFor();
}

/** Makes the browser take a second to keep the steps that undo takes back, until the page is loaded again. */
const keepStepsSlowly = (of: Page) =>
  of.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (...given) {
      const until = this.name === "steps" ? performance.now() + 1000 : 0;
      const goOn = () => {
        if (performance.now() < until) this.count().onsuccess = goOn;
      };
      goOn();
      return put.apply(this, given);
    };
  });

/** Lets the browser's store of books refuse whatever is put into it, for as long as the page's storage says so. */
function fullDisk(): void {
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (...given) {
    if (localStorage.getItem("full")) throw new DOMException("no room", "QuotaExceededError");
    return put.apply(this, given);
  };
}

describe("kept in the browser", () => {
  it("after a first start there is one book on the shelf", async () => {
    await kept();
    await page.keyboard.press("Control+o");
    await page
      .getByRole("button", { name: /In inches/ })
      .first()
      .waitFor();
    await expect.poll(() => page.getByRole("button", { name: /^Move to bin/ }).count()).toBe(1);
  });

  it("what was typed is there after a reload, and so are the chosen cell and the last step", async () => {
    await keepStepsSlowly(page);
    await note("for the last scene");
    await cell(page, "C5").click();
    await kept();
    await again();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("for the last scene");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("");
    await expect.poll(() => page.getByLabel("Selected cell", { exact: true }).textContent()).toBe("C5");
  });

  it("what was typed in the last moment before a reload is there too", async () => {
    await note("first words");
    await kept();
    await note("typed at the last moment");
    await again();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("typed at the last moment");
  });

  it("a page that dies without a word loses nothing that Enter has put into the book", async () => {
    await kept();
    await note("before the crash");
    const session = await page.context().newCDPSession(page);
    const gone = page.waitForEvent("crash");
    session.send("Page.crash").catch(() => {});
    await gone;
    const second = await page.context().newPage();
    await second.goto(page.url());
    await expect.poll(() => cell(second, "A21").textContent()).toBe("before the crash");
  });

  it("on a full disk the last work is there after every reload, and one copy of it once there is room", async () => {
    await kept();
    await page.addInitScript(fullDisk);
    await page.evaluate(() => localStorage.setItem("full", "yes"));
    await page.evaluate(fullDisk);
    const text = "for the mill wheel";
    await note(text);
    await expect.poll(() => page.locator(".kept").textContent()).toContain("Not saved");
    for (let times = 0; times < 2; times += 1) {
      await again();
      await expect.poll(() => cell(page, "A21").textContent()).toBe(text);
      await expect.poll(() => page.locator(".kept").textContent()).toContain("Not saved");
    }
    await page.evaluate(() => localStorage.removeItem("full"));
    await note("for the mill wheel, in red");
    await kept();
    await again();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("for the mill wheel, in red");
    await page.keyboard.press("Control+o");
    await page
      .getByRole("button", { name: /^Move to bin/ })
      .first()
      .waitFor();
    expect(await page.getByRole("button", { name: /^Move to bin/ }).count()).toBe(1);
  });

  it("several books are kept; each opens as it was left, one can be moved to the bin, brought back and deleted", async () => {
    await note("in the peplum book");
    await page.keyboard.press("Control+o");
    await page.getByRole("button", { name: "A blank book in centimetres" }).click();
    await expect.poll(() => title().inputValue()).toBe("A new book");
    await title().fill("The squire's cloak");
    await page.keyboard.press("Enter");
    await note("in the cloak book");
    await kept();
    await page.keyboard.press("Control+o");
    await page.getByRole("button", { name: /^The Miller's Daughter.*changed/ }).click();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("in the peplum book");
    await page.keyboard.press("Control+o");
    await page.getByRole("button", { name: "Move to bin The squire's cloak" }).click();
    await page.getByText("Bin: 1 book").click();
    await page.getByRole("button", { name: "Restore The squire's cloak" }).click();
    await page.getByRole("button", { name: /^The squire's cloak.*changed/ }).waitFor();
    await page.getByRole("button", { name: "Move to bin The squire's cloak" }).click();
    await page.getByText("Bin: 1 book").click();
    await page.getByRole("button", { name: "Delete … The squire's cloak" }).click();
    await page.getByRole("button", { name: "Delete permanently The squire's cloak" }).click();
    await expect.poll(() => page.getByText("The squire's cloak").count()).toBe(0);
    await page.getByRole("button", { name: /^Copy … The Miller's Daughter/ }).click();
    await page.keyboard.press("Escape");
    await expect.poll(() => page.getByLabel("Title of the copy").count()).toBe(0);
    await page.getByRole("button", { name: /^Copy … The Miller's Daughter/ }).click();
    await page.getByLabel("Title of the copy").fill("The Miller's Daughter, second cast");
    await page.keyboard.press("Enter");
    await page
      .getByText("“The Miller's Daughter, second cast” is a copy of “The Miller's Daughter")
      .waitFor();
    await page.getByRole("button", { name: /^The Miller's Daughter, second cast.*changed/ }).click();
    await expect.poll(() => title().inputValue()).toBe("The Miller's Daughter, second cast");
    // What has changed since it was opened, and against the book it was copied from; each line leads to its cell.
    await page.getByRole("navigation").getByRole("button", { name: "Draft", exact: true }).click();
    await cell(page, "B8").click();
    await page.keyboard.type("12");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Control+o");
    const differences = page.getByRole("region", { name: "Differences" });
    for (const how of [
      /^What has changed in The Miller's Daughter, second cast/,
      /^Compare The Miller's Daughter of/,
    ]) {
      await page.getByRole("button", { name: how }).click();
      await differences.getByRole("row", { name: "depth (Draft!B8) 9 12" }).waitFor();
      if (String(how).includes("changed")) await page.getByRole("button", { name: how }).click();
    }
    expect(await violations(page, ".dialog")).toEqual([]);
    await differences.getByRole("table", { name: "What came of it" }).getByRole("button").first().click();
    await page.getByRole("dialog").waitFor({ state: "detached" });
    await page.keyboard.press("Control+o");
    await page
      .getByLabel("A file to compare with")
      .setInputFiles({ name: "ready.json", mimeType: "application/json", buffer: Buffer.from(ready) });
    await differences.getByRole("row", { name: "depth (Draft!B8) 9 12" }).waitFor();
    await page.keyboard.press("Escape");
    await page.getByRole("navigation").getByRole("button", { name: "Measure", exact: true }).click();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("in the peplum book");
  });

  it("a second tab says that the book is open twice, and neither writes over the other", async () => {
    await kept();
    const second = await page.context().newPage();
    await second.goto(page.url());
    await cell(second, "A1").waitFor();
    await second.getByText("open in another tab too").waitFor();
    await note("from the first tab");
    await kept();
    await note("from the second tab", second);
    await second.getByText("are saved as a separate book").waitFor();
    await kept(second);
    await again();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("from the first tab");
    await again(second);
    await expect.poll(() => cell(second, "A21").textContent()).toBe("from the second tab");
    await expect.poll(() => title(second).inputValue()).toContain("second copy");
  });

  it("what two closed tabs had written down is in a book, each; nothing is written over", async () => {
    await note("on the shelf");
    await kept();
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const request = indexedDB.open("ellwand");
          request.onsuccess = () => {
            const tx = request.result.transaction(["spines", "leaves"]);
            const spines = tx.objectStore("spines").getAll();
            const leaves = tx.objectStore("leaves").getAll();
            tx.oncomplete = () => {
              request.result.close();
              const [{ id, revision }] = spines.result;
              const { text } = leaves.result[0];
              const write = (tab: string, at: number, word: string) =>
                localStorage.setItem(
                  `ellwand.journal.${id}.${tab}.1`,
                  JSON.stringify({
                    revision: at,
                    from: 0,
                    step: 1,
                    text: text.replace("on the shelf", word),
                  }),
                );
              write("one", revision, "from the first tab");
              write("two", revision, "from the second tab");
              write("three", revision - 1, "from long before");
              localStorage.setItem(
                `ellwand.journal.${id}.four.1`,
                '{"revision":1,"from":0,"step":1,"change":{"at":[]}}',
              );
              done();
            };
          };
        }),
    );
    await again();
    await page.getByText("are saved as a separate book").waitFor();
    await kept();
    await page.keyboard.press("Control+o");
    const { text: all } = await download(page, () =>
      page.getByRole("button", { name: "Save all books to one file" }).click(),
    );
    for (const word of [
      "from the first tab",
      "from the second tab",
      "from long before",
      String.raw`\"at\": []`,
    ])
      expect(all).toContain(word);
    await expect
      .poll(() => page.evaluate(() => Object.keys(localStorage).filter((key) => /journal/.test(key))))
      .toEqual([]);
    await expect.poll(() => page.getByText("This book does not open").count()).toBe(1);

    // What a tab wrote down of a book that has not been opened since is in the file too.
    await page.evaluate(
      (open) =>
        new Promise<void>((done) => {
          const request = indexedDB.open("ellwand");
          request.onsuccess = () => {
            const store = (name: string) => request.result.transaction(name).objectStore(name);
            store("leaves").getAll().onsuccess = ({ target }) => {
              const leaves = (target as IDBRequest<{ id: string; text: string }[]>).result;
              const other = leaves.find(({ id, text }) => id !== open && text.includes("from long before"))!;
              const text = other.text.replace("from long before", "typed last of all");
              store("spines").get(other.id).onsuccess = ({ target }) => {
                const { revision } = (target as IDBRequest<{ revision: number }>).result;
                const entry = JSON.stringify({ revision, from: 0, step: 1, text });
                localStorage.setItem(`ellwand.journal.${other.id}.five.1`, entry);
                request.result.close();
                done();
              };
            };
          };
        }),
      await page.evaluate(() => sessionStorage.getItem("ellwand.open")),
    );
    const { text: latest } = await download(page, () =>
      page.getByRole("button", { name: "Save all books to one file" }).click(),
    );
    expect(latest).toContain("typed last of all");
    expect(latest).not.toContain("from long before");
  });

  it("a second tab goes on from what the first has kept, once that is closed", async () => {
    await kept();
    const second = await page.context().newPage();
    await second.goto(page.url());
    await second.getByText("open in another tab too").waitFor();
    await note("from the first tab");
    await kept();
    await page.close();
    await expect.poll(() => cell(second, "A21").textContent()).toBe("from the first tab");
    await expect.poll(() => second.getByText("open in another tab too").count()).toBe(0);
  });
});

describe("files", () => {
  it("a book saved to a file and opened again is the same book", async () => {
    await note("saved in a file");
    const { name, text } = await download(page, () =>
      page.getByRole("button", { name: "Save a file" }).click(),
    );
    expect(name).toBe("the-millers-daughter-of-withy-green-peplums.json");
    await page.keyboard.press("Control+o");
    await page.getByRole("button", { name: "A blank book in inches" }).click();
    await expect.poll(() => title().inputValue()).toBe("A new book");
    await openFile("saved.json", text);
    await expect.poll(() => cell(page, "A21").textContent()).toBe("saved in a file");
    expect((await download(page, () => page.keyboard.press("Control+s"))).text).toBe(text);
  });

  it("a broken file is refused in a sentence that says what is wrong, and the open book stays", async () => {
    await note("still here");
    const alert = page.getByRole("alert").filter({ hasText: "was not opened" });
    for (const [name, text, reason] of [
      ["half.json", ready.slice(0, ready.length / 2), /cut off/],
      ["newer.json", ready.replace(/"ellwand": \d+/, '"ellwand": 99'), /newer Ellwand \(version 99/],
      ["letters.json", "withy green ".repeat(900_000), /is not JSON/],
      ["empty.json", "", /empty/],
      ["dance.json", ready.replace('"stage": "Draft"', '"stage": "Dance"'), /"Dance"/],
    ] as const) {
      await openFile(name, text);
      await expect.poll(() => alert.last().textContent()).toContain(`“${name}”`);
      await expect.poll(() => alert.last().textContent()).toMatch(reason);
      await expect.poll(() => cell(page, "A21").textContent()).toBe("still here");
    }
    await again();
    await expect.poll(() => cell(page, "A21").textContent()).toBe("still here");
  });

  it("a script in a book's cells, headings, titles and names of files is shown as text", async () => {
    const script = "<img src=x onerror=\"document.title='taken'\"><script>document.title='taken'</script>";
    const book = JSON.parse(ready);
    book.title = script;
    book.pages[0].rows[0][0] = script;
    book.pages[0].columns[0].heading = script;
    book.pages[0].notes = { A2: script };
    await openFile("<b>script</b>.json", JSON.stringify(book));
    await expect.poll(() => title().inputValue()).toBe(script);
    await expect.poll(() => cell(page, "A1").textContent()).toBe(script);
    await expect.poll(() => page.locator(".column-heading").allTextContents()).toContain(script);
    await openFile("<b>script</b>.json", "no book");
    await page.getByText("“<b>script</b>.json” was not opened").waitFor();
    await expect.poll(() => page.locator("img, #page b:text('script')").count()).toBe(0);
    await expect.poll(() => page.title()).toBe("Ellwand");
  });
});
