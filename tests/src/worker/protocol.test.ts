import { describe, expect, it } from "vitest";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { isBetter } from "../../../src/lay/answer.ts";
import { checkLay } from "../../../src/lay/check.ts";
import { quickLay, quickLayUntil } from "../../../src/lay/quick.ts";
import { LayWork, type SearchNews, type SearchTask, workTask } from "../../../src/worker/protocol.ts";
import { publishedQuestion } from "../lay/published.ts";

const quick = (question: LayQuestion): Lay => {
  const lay = quickLay(question);
  if ("refusal" in lay) throw new Error(lay.refusal);
  return lay;
};

/** Everything told, as it comes out of a message. */
function told(question: LayQuestion, start: Lay, rounds: number): SearchNews[] {
  const news: SearchNews[] = [];
  const task = structuredClone({ question, start, seed: 3, milliseconds: 1000, rounds });
  for (const _ of workTask(task, (one) => news.push(structuredClone(one))));
  return news;
}

describe("the work of a lay worker", () => {
  it("tells lays that are each better than the last and without fault, how far it is, and its end", () => {
    const question = publishedQuestion("fu");
    // Boxes in rows: any search finds shorter lays.
    const start = quickLayUntil(question, () => true) as Lay;
    const news = told(question, start, 600);
    const lays = news.flatMap((one) => ("better" in one ? [one.better] : []));
    expect(lays.length).toBeGreaterThan(0);
    let last = start;
    for (const lay of lays) {
      expect(isBetter(question, lay, last)).toBe(true);
      expect(checkLay(question, lay, 3e-6)).toEqual([]);
      last = lay;
    }
    const shares = news.flatMap((one) => ("progress" in one ? [one.progress] : []));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(news.at(-1)).toEqual({ done: "time" });
  });

  it("ends at once when no lay can be better", () => {
    const square: LayQuestion = {
      pieces: [
        {
          name: "apron",
          outline: [
            [0, 0],
            [10, 0],
            [10, 10],
            [0, 10],
          ],
          quantity: 3,
          turns: [0],
        },
      ],
      cloths: [{ name: "cloth", width: 30, length: null }],
      gap: 0,
      repeat: 0,
    };
    expect(told(square, quick(square), 1000).at(-1)).toEqual({ done: "best" });
  });

  it("passes over a start that is no lay of the question", () => {
    const question = publishedQuestion("fu");
    const lay = quick(question);
    const heap: Lay = { ...lay, placements: lay.placements.map((p) => ({ ...p, x: 0, y: 0 })) };
    const news = told(question, heap, 20);
    const first = news.find((one) => "better" in one);
    expect(first && "better" in first && checkLay(question, first.better)).toEqual([]);
    expect(news.at(-1)).toEqual({ done: "time" });
  });

  it("says in a sentence why there is nothing to search", () => {
    const question = { ...publishedQuestion("fu"), pieces: [] };
    expect(told(question, { placements: [], lengths: [0], density: 0, missing: [] }, 10)).toEqual([
      { refusal: "there is no piece to lay: give at least one" },
    ]);
  });

  it("without a start it begins with the quick lay, and with no time to search it ends there", () => {
    const question = publishedQuestion("fu");
    const news: SearchNews[] = [];
    for (const _ of workTask({ question, seed: 1, milliseconds: 0 }, (one) => news.push(one)));
    expect(news).toEqual([{ better: quick(question) }, { done: "time" }]);
  });

  it("rests between two slices and goes on where it was", async () => {
    const question = publishedQuestion("fu");
    const news: SearchNews[] = [];
    let turns = 0;
    const work: LayWork = new LayWork(
      (one) => news.push(one as SearchNews),
      async () => {
        turns += 1;
        if (turns === 3) await work.hear({ rest: true });
      },
    );
    const task: SearchTask = { question, start: quick(question), seed: 3, milliseconds: 1, rounds: 200 };
    const done = work.hear(task);
    await new Promise((resolve) => setTimeout(resolve));
    expect(turns).toBe(3);
    expect(news.some((one) => "done" in one)).toBe(false);
    await work.hear({ rest: false });
    await done;
    expect(news.at(-1)).toEqual({ done: "time" });
    expect(news.filter((one) => !("progress" in one))).toEqual(
      told(question, quick(question), 200).filter((one) => !("progress" in one)),
    );
  });
});
