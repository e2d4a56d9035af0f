/**
 * What keeping a book of 100,000 formulas costs the page in Chromium: after a figure is typed in it, the longest
 * task until it is painted and the longest task of all, and when the page says that the book is saved.
 * FORMULAS=5000 sets the size, PRESSES=20 how often a figure is typed, PROFILE=file.cpuprofile writes a profile of the page.
 * npm run speed -- tests/speed/saved.speed.ts
 */
import { writeFileSync } from "node:fs";
import { it } from "vitest";
import { cell, open } from "../browser/page.ts";
import { openBook, print, told } from "./heard.ts";
import { largeBook } from "./large-book.ts";

const FORMULAS = Number(process.env.FORMULAS ?? 100_000);
const PRESSES = Number(process.env.PRESSES ?? 20);

interface Kept {
  readonly longest: number;
  readonly tasks: string;
  readonly saved: number;
}

it("keeping a large book", async () => {
  const book = largeBook(FORMULAS);
  const page = await open();
  await openBook(page, book);
  await page.waitForTimeout(5000);
  const session = await page.context().newCDPSession(page);
  if (process.env.PROFILE) {
    await session.send("Profiler.enable");
    await session.send("Profiler.setSamplingInterval", { interval: 500 });
  }
  await cell(page, "B3").click();
  await page.waitForTimeout(3000);
  const all: Kept[] = [];
  for (let n = 1; n <= PRESSES; n += 1) {
    if (n === 3 && process.env.PROFILE) await session.send("Profiler.start");
    await page.keyboard.type(`${50 + n / 8}`);
    await page.waitForTimeout(600);
    await page.evaluate(() => {
      const state = { begun: performance.now(), saved: 0, tasks: [] as string[], longest: 0 };
      Object.assign(globalThis, { kept: state });
      addEventListener(
        "keydown",
        ({ timeStamp }) => {
          state.begun = timeStamp;
        },
        { capture: true, once: true },
      );
      const tasks = new PerformanceObserver((list) => {
        for (const { startTime, duration } of list.getEntries()) {
          if (startTime + duration < state.begun) continue;
          state.tasks.push(`${Math.round(startTime - state.begun)}+${Math.round(duration)}`);
          state.longest = Math.max(state.longest, duration);
        }
      });
      tasks.observe({ type: "longtask" });
      const status = document.querySelector(".keeping, [data-keeping]") ?? document.body;
      const watch = new MutationObserver(() => {
        const said = document.body.textContent?.includes("Saved in this browser");
        state.saved = said ? state.saved || performance.now() - state.begun : 0;
      });
      watch.observe(status, { subtree: true, childList: true, characterData: true });
      setTimeout(() => {
        tasks.disconnect();
        watch.disconnect();
      }, 2500);
    });
    await page.keyboard.press("Enter");
    await page.waitForTimeout(2700);
    all.push(
      await page.evaluate(() => {
        const { longest, tasks, saved } = (
          globalThis as unknown as { kept: { longest: number; tasks: string[]; saved: number } }
        ).kept;
        return { longest, tasks: tasks.join(" "), saved };
      }),
    );
    await page.keyboard.press("ArrowUp");
    await page.waitForTimeout(300);
  }
  if (process.env.PROFILE) {
    const { profile } = await session.send("Profiler.stop");
    writeFileSync(process.env.PROFILE, JSON.stringify(profile));
  }
  for (const one of all) console.log(Math.round(one.saved), one.tasks);
  print("ms", [
    ["", "longest task", "saved"],
    [`${FORMULAS}`, told(all.map((o) => o.longest)), told(all.map((o) => o.saved))],
  ]);
});
