/**
 * The ready book of the whole cast: opening, edits, saving and its lays, in Node; opening and keys in Chromium.
 * Goals: open in 1 s, p95 of a key to the paint under 50 ms, saving under 100 ms, the quick lay of 108 pieces
 * under 1 s. PRESSES=30 sets how often.
 * npx vitest run --config tests/speed/vitest.config.ts tests/speed/whole-cast.speed.ts
 */
import { readFileSync } from "node:fs";
import { it } from "vitest";
import { findPlace } from "../../src/book/address.ts";
import { readBook } from "../../src/book/read.ts";
import { writeBook } from "../../src/book/write.ts";
import { checks } from "../../src/engine/checks.ts";
import { Engine } from "../../src/engine/engine.ts";
import { layDesk, pageDesk } from "../../src/lay/desk.ts";
import { typeCells } from "../../src/store/commands.ts";
import { Store } from "../../src/store/store.ts";
import { cell, open } from "../browser/page.ts";
import { heardWhile, print, told } from "./heard.ts";

const PRESSES = Number(process.env.PRESSES ?? 30);
const text = readFileSync(new URL("../../templates/whole-cast.json", import.meta.url), "utf8");

function ready() {
  const reading = readBook(text);
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
}

/** The time of `work`, and what of it the processor was busy for this process, in ms. */
function timed(work: () => void): [number, number] {
  const busy = process.cpuUsage();
  const begun = performance.now();
  work();
  return [performance.now() - begun, process.cpuUsage(busy).user / 1000];
}
const each = (work: (turn: number) => void): string[] => {
  const all = Array.from({ length: PRESSES }, (_, n) => timed(() => work(n)));
  return [told(all.map(([wall]) => wall)), told(all.map(([, busy]) => busy))];
};

it("in Node", () => {
  const rows: string[][] = [["", "by the clock", "processor"]];
  const row = (what: string, [wall, busy]: readonly [number, number]) =>
    rows.push([what, wall.toFixed(0), busy.toFixed(0)]);
  row("file read", timed(ready));
  const book = ready();
  row(
    "engine built, lays left to the worker",
    timed(() => new Engine(book, pageDesk)),
  );
  row(
    "engine built again, lays left to the worker",
    timed(() => new Engine(ready(), pageDesk)),
  );
  row(
    "engine built, every cloth laid",
    timed(() => new Engine(book, layDesk)),
  );
  const store = new Store(book, pageDesk);
  row(
    "problems",
    timed(() => void checks(store.engine)),
  );
  const edit = (address: string, typed: (turn: number) => string) => (turn: number) => {
    store.run(typeCells([{ ...findPlace(book, address)!, typed: typed(turn) }]));
    checks(store.engine);
    for (let r = 0; r < 30; r += 1)
      for (let column = 0; column < 13; column += 1) store.engine.view({ page: 0, row: r, column });
  };
  const laid = (turn: number) => `${34 + turn / 16}`;
  rows.push(["the cook's waist, problems, 390 cells in view", ...each(edit("Measure!I13", laid))]);
  rows.push(["a price, problems, 390 cells in view", ...each(edit("Trimmings!H5", (n) => `${20 + n}`))]);
  rows.push([
    "a fitting of the gown, problems, 390 cells in view",
    ...each(edit("Fit!E2", (n) => `${n}/16`)),
  ]);
  rows.push(["written to save", ...each(() => void writeBook(store.book))]);
  const lays = timed(() => new Engine(ready(), layDesk).value(findPlace(book, "Cut!D2")!));
  row("engine built again, 156 pieces laid on seven cloths", lays);
  print("the whole cast in Node, ms (p50 / p95 where often)", rows);
}, 600_000);

it("in Chromium", async () => {
  const page = await open({ viewport: { width: 2400, height: 900 } });
  const opened = await page.evaluate(async (file) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([file], "book.json", { type: "application/json" }));
    const begun = performance.now();
    dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
    return new Promise<number>((done) => {
      const look = () => {
        const title = document.querySelector<HTMLInputElement>('[aria-label="Title of the book"]')?.value;
        if (title?.endsWith("the whole cast") && document.body.textContent.includes("the goose girl"))
          setTimeout(() => done(performance.now() - begun));
        else requestAnimationFrame(look);
      };
      look();
    });
  }, text);
  const rows: string[][] = [
    ["", "painted", "panels settled"],
    ["opened", opened.toFixed(0), ""],
  ];
  await page.waitForTimeout(8000);
  for (const [title, address, typed] of [
    ["Measure", "I13", (n: number) => `${34 + n / 16}`],
    ["Trimmings", "H5", (n: number) => `${20 + n}`],
  ] as const) {
    await page.getByRole("navigation").getByRole("button", { name: title, exact: true }).click();
    await cell(page, address).click();
    const heard = await heardWhile(page, ["Enter"], async () => {
      for (let n = 1; n <= PRESSES; n += 1) {
        // As a quick hand types: keys that come all at once would count what the keys before them set off.
        await page.keyboard.type(typed(n), { delay: 60 });
        await page.keyboard.press("Enter");
        await page.waitForTimeout(450);
        await page.keyboard.press("ArrowUp");
      }
    });
    rows.push([
      `a key in ${title}!${address}`,
      told(heard.map(({ painted }) => painted)),
      told(heard.map(({ settled }) => settled)),
    ]);
  }
  print("the whole cast in Chromium, ms (p50 / p95 where often)", rows);
}, 600_000);
