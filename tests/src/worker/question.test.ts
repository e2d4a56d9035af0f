import { setImmediate } from "node:timers/promises";
import { expect, test } from "vitest";
import type { Book } from "../../../src/book/shape.ts";
import {
  type AnswerNews,
  heard as added,
  NOTHING_HEARD,
  type Question,
} from "../../../src/engine/question.ts";
import type { Row, Watched } from "../../../src/engine/sweep.ts";
import { Answerer } from "../../../src/worker/question.ts";
import { QuestionClient, type QuestionWorker } from "../../../src/worker/question-client.ts";
import { cell, watch } from "../engine/ask.ts";
import { laidPeplum, panelSkirt } from "../engine/whatif-books.ts";

const sweepOf = (book: Book, to: number, watched: readonly Watched[]): Question => ({
  is: "sweep",
  book,
  varied: [cell(book, "depth")],
  spans: [{ from: 8, to, step: 0.125 }],
  watched,
});

function answerer() {
  const heard: [number, AnswerNews][] = [];
  const worker = new Answerer(
    (id, news) => heard.push([id, structuredClone(news)]),
    () => setImmediate(),
  );
  const of = (id: number) => heard.filter(([one]) => one === id).map(([, news]) => news);
  return { worker, of };
}

const rowsIn = (news: readonly AnswerNews[]): Row[] => news.flatMap((one) => ("rows" in one ? one.rows : []));

test("a sweep streams its rows in order, then its thresholds, then that it is done", async () => {
  const book = panelSkirt();
  const { worker, of } = answerer();
  await worker.ask(1, structuredClone(sweepOf(book, 30, [watch(book, "buy")])));
  const news = of(1);
  expect(rowsIn(news).map(({ figures }) => figures[0])).toEqual(
    Array.from({ length: 177 }, (_, i) => 8 + i / 8),
  );
  expect(news.findIndex((one) => "thresholds" in one)).toBeGreaterThan(
    news.findLastIndex((one) => "rows" in one),
  );
  expect(news.at(-1)).toEqual({ done: true });
});

test("a newer question ends the older one, which tells nothing more", async () => {
  const book = laidPeplum();
  const { worker, of } = answerer();
  const long = worker.ask(1, sweepOf(book, 60, [watch(book, "cloth")]));
  await setImmediate();
  const before = of(1).length;
  const short = worker.ask(2, sweepOf(book, 8.5, [watch(book, "hem_edge")]));
  await Promise.all([long, short]);
  expect(rowsIn(of(1)).length).toBeLessThan(417);
  expect(of(1).some((one) => "done" in one)).toBe(false);
  expect(of(1).length - before).toBeLessThanOrEqual(1);
  expect(rowsIn(of(2))).toHaveLength(5);
  expect(of(2).at(-1)).toEqual({ done: true });
});

test("while there is nothing new, the page hears that the work goes on, and the answer stays as it is", async () => {
  const book = laidPeplum();
  const heard: AnswerNews[] = [];
  const worker = new Answerer((_, news) => heard.push(news), () => setImmediate(), undefined, 0);
  const question: Question = { is: "sensitivity", book, watched: watch(book, "cloth"), rounds: [0.1] };
  await worker.ask(1, question);
  const beats = heard.filter((news) => "atWork" in news);
  expect(beats.length).toBeGreaterThan(1);
  const others = heard.filter((news) => !("atWork" in news));
  const whole = heard.reduce(added, NOTHING_HEARD);
  expect(whole).toEqual({ ...others.reduce(added, NOTHING_HEARD), newsCount: heard.length });
  expect(whole.effects).not.toBeNull();
}); // biome-ignore format: short

test("solving, comparing and ranking answer through the same door", async () => {
  const book = { ...panelSkirt(), trials: [{ title: "deeper", cells: { "Draft!B4": "31 in" } }] };
  const { worker, of } = answerer();
  const make = watch(book, "buy");
  await worker.ask(1, {
    is: "solve",
    book,
    varied: [cell(book, "depth")],
    spans: [{}],
    make,
    aim: { is: "atmost", value: 90 },
    least: false,
  });
  expect(of(1)[0]).toMatchObject({ solution: { found: { figures: [27] } } });
  await worker.ask(2, { is: "compare", book });
  expect(of(2)[0]).toMatchObject({ comparison: { titles: ["as it stands", "deeper"] } });
  await worker.ask(3, { is: "sensitivity", book, watched: make });
  expect(of(3)[0]).toMatchObject({
    effects: [
      { measurement: { label: "depth" } },
      { measurement: { label: "hem" } },
      { measurement: { label: "hip" } },
      {},
    ],
  });
});

test("a question that can't be asked comes back as one sentence", async () => {
  const book = panelSkirt();
  const { worker, of } = answerer();
  await worker.ask(1, { ...sweepOf(book, 4, [watch(book, "buy")]) } as Question);
  expect(of(1)).toEqual([
    { problem: "from must be at most to: depth can't go from 8 up to 4" },
    { done: true },
  ]);
  await worker.ask(2, {
    ...(sweepOf(book, 9, [watch(book, "buy")]) as object),
    varied: [cell(book, "cut")],
  } as never);
  expect(of(2)[0]).toMatchObject({ problem: expect.stringMatching(/^cut is worked out by/) });
});

test("the client hands on only news of its latest question and says so when its worker dies", () => {
  const made: (QuestionWorker & { sent: unknown[]; ended: boolean })[] = [];
  const client = new QuestionClient(() => {
    const worker = {
      sent: [] as unknown[],
      ended: false,
      postMessage: (message: unknown) => worker.sent.push(message),
      terminate: () => {
        worker.ended = true;
      },
      onmessage: null as QuestionWorker["onmessage"],
      onerror: null as QuestionWorker["onerror"],
    };
    made.push(worker as never);
    return worker as never;
  });
  const book = panelSkirt();
  const heard: AnswerNews[] = [];
  client.ask({ is: "compare", book }, () => heard.push({ problem: "of the older question" }));
  const stop = client.ask({ is: "compare", book }, (news) => heard.push(news));
  made[0]!.onmessage!({ data: { id: 1, news: { done: true } } });
  expect(heard).toEqual([]);
  made[0]!.onmessage!({ data: { id: 2, news: { rows: [] } } });
  expect(heard).toEqual([{ rows: [] }]);
  stop();
  expect(made[0]!.sent.at(-1)).toBeNull();
  client.ask({ is: "compare", book }, (news) => heard.push(news));
  made[0]!.onerror!({ message: "out of memory" });
  expect(heard.slice(1)).toEqual([
    { problem: "the worker that answers questions stopped: out of memory; ask again" },
    { done: true },
  ]);
  expect(made[0]!.ended).toBe(true);
  client.ask({ is: "compare", book }, () => {});
  expect(made).toHaveLength(2);
});
