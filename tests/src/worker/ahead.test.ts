/** Questions whose settings are worked by helpers too: the answer is, to the last figure, that of one worker alone. */
import { setImmediate } from "node:timers/promises";
import { afterAll, expect, test, vi } from "vitest";
import type { Book } from "../../../src/book/shape.ts";
import type { AnswerNews, Question } from "../../../src/engine/question.ts";
import type { AheadNews, AheadOrder } from "../../../src/worker/ahead.ts";
import { type AheadWorker, Helpers, helpersFor } from "../../../src/worker/ahead-client.ts";
import { cell, watch } from "../engine/ask.ts";
import { bookOf, goredSkirt, laidPeplum } from "../engine/whatif-books.ts";

afterAll(() => vi.resetModules());

/** Two laid cells, one of which does not rest on what is varied. */
const twoCloths = (): Book =>
  bookOf({
    depth: "9 in",
    panel: "=FLARED_PANEL(14;20;depth)",
    cuff: "=FLARED_PANEL(9;11;4)",
    lining: "=YARDAGE(cuff;6;36)",
    cloth: "=YARDAGE(panel;4;54)",
    both: "=lining+cloth",
    verdict: '=IF(both>60;"check: more than there is";"ok")',
  });

const span = (from: number, to: number, step: number) => ({ from, to, step });

const sweepOf = (book: Book, from: number, to: number, step: number, names: readonly string[]): Question => ({
  is: "sweep", book, varied: [cell(book, "depth")], spans: [span(from, to, step)], watched: names.map((name) => watch(book, name)),
}); // biome-ignore format: a list

const solveOf = (book: Book, is: "atmost" | "atleast" | "equal", value: number, least = false): Question => ({
  is: "solve", book, varied: [cell(book, "depth")], spans: [span(7, 14, 0.125)], make: watch(book, "cloth"), aim: { is, value }, least,
}); // biome-ignore format: a list

/** The modules that lay and calculate, loaded anew: what one thread remembers, another does not. */
async function thread<T>(load: () => Promise<T>): Promise<T> {
  vi.resetModules();
  return load();
}

const asker = () => thread(() => import("../../../src/worker/question.ts"));
const helper = () => thread(() => import("../../../src/worker/ahead.ts"));

/** A worker that is a thread of its own in all but the processor; `late` turns go by before it hears an order. */
function helperWorker({ Helper }: Awaited<ReturnType<typeof helper>>, late: number, told: AheadNews[]) {
  const worker: AheadWorker = {
    postMessage: (order: AheadOrder) => {
      const sent = structuredClone(order);
      void wait(late).then(() => works.take(sent));
    },
    terminate: () => {},
    onmessage: null,
    onerror: null,
  };
  const works = new Helper(
    (news) => {
      const data = structuredClone(news);
      told.push(data);
      void wait(late).then(() => worker.onmessage?.({ data }));
    },
    () => wait(1),
  );
  return worker;
}

async function wait(turns: number): Promise<void> {
  for (let i = 0; i < turns; i += 1) await setImmediate();
}

/** The answer to a question as text, its rows joined together. */
async function answered(
  { Answerer }: Awaited<ReturnType<typeof asker>>,
  question: Question,
  helpers?: Helpers,
  between = 1,
): Promise<string> {
  const heard: AnswerNews[] = [];
  const worker = new Answerer(
    (_, news) => heard.push(structuredClone(news)),
    () => wait(between),
    helpers?.begin,
  );
  await worker.ask(1, question);
  // How often the page hears that the work goes on depends on the machine.
  const rows = heard.flatMap((news) => ("rows" in news ? news.rows : []));
  return JSON.stringify([rows, heard.filter((news) => !("rows" in news || "atWork" in news))]);
}

/** A clock by which every step is worth helping with. */
const slowClock = () => {
  let now = 0;
  return () => {
    now += 25;
    return now;
  };
};

const QUESTIONS: readonly (readonly [string, () => Question])[] = [
  ["a sweep over laid cloth", () => sweepOf(laidPeplum(), 7, 13, 1 / 8, ["cloth", "hem_edge"])],
  ["a sweep with a lay that stays", () => sweepOf(twoCloths(), 7, 13, 1 / 8, ["both", "verdict"])],
  ["a sweep downwards into what can't be cut", () => sweepOf(laidPeplum(), -2, 4, 1 / 8, ["cloth"])],
  ["a sweep of gores", () => sweepOf(goredSkirt(), 20, 44, 1 / 2, ["cloth"])],
  ["what is at most a length", () => solveOf(laidPeplum(), "atmost", 10)],
  ["what is at least a length that none reaches", () => solveOf(laidPeplum(), "atleast", 20)],
  ["the least setting at most a length", () => solveOf(laidPeplum(), "atleast", 12, true)],
  ["what is just a length", () => solveOf(laidPeplum(), "equal", 11)],
];

QUESTIONS.forEach(([title, ask], i) => {
  test(`${title} is answered to the last figure as without helpers`, async () => {
    const question = ask();
    const alone = await answered(await asker(), question);
    const late = i % 2 === 0 ? 0 : 3;
    const told: AheadNews[] = [];
    const modules = await helper();
    const helpers = new Helpers(2, () => helperWorker(modules, late, told), slowClock());
    expect(await answered(await asker(), question, helpers)).toBe(alone);
    expect(told.some(({ worked }) => worked && worked.steps.length > 0)).toBe(true);
  });
});

test("settings worked by helpers are taken over", async () => {
  const taken: boolean[] = [];
  const spied = (helpers: Helpers) => ({
    begin: (task: Parameters<Helpers["begin"]>[0]) => {
      const ahead = helpers.begin(task)!;
      return {
        expect: ahead.expect.bind(ahead),
        end: ahead.end,
        take: (figures: readonly number[]) => {
          const step = ahead.take(figures);
          taken.push(step !== null);
          return step;
        },
      };
    },
  });
  const told: AheadNews[] = [];
  const worker = helperWorker(await helper(), 0, told);
  const helpers = spied(new Helpers(1, () => worker, slowClock())) as unknown as Helpers;
  await answered(await asker(), sweepOf(laidPeplum(), 7, 13, 1 / 8, ["cloth"]), helpers);
  expect(taken.filter(Boolean).length).toBeGreaterThan(5);
});

test("what a helper lays is refused where this thread knows a better lay", async () => {
  const { Effort } = await thread(() => import("../../../src/lay/effort.ts"));
  const { AheadEngine } = await import("../../../src/engine/ahead.ts");
  const { learnLay, quickAnswer } = await import("../../../src/lay/desk.ts");
  const book = goredSkirt();
  const engine = new AheadEngine(
    { book, varied: [cell(book, "depth")], watched: [cell(book, "cloth")] },
    quickAnswer,
  );
  const { laid, steps } = engine.work([[42], [42.5], [42]]);
  expect(steps.map(({ lays }) => lays)).toEqual([[0], [1], [0]]);
  expect(laid).toHaveLength(2);
  const effort = new Effort();
  expect(laid.map(effort.agrees)).toEqual([true, true]);
  expect(effort.lays).toHaveLength(2);
  const [{ question, answer }] = laid as [(typeof laid)[0]];
  if ("refusal" in answer) throw new Error(answer.refusal);
  learnLay(question, { ...answer, lengths: [answer.lengths[0]! - 1] });
  expect(laid.map(new Effort().agrees)).toEqual([false, true]);
  engine.destroy();
});

test("helpers that die, refuse or fall silent cost no answer", async () => {
  const question = sweepOf(laidPeplum(), 7, 10, 1 / 8, ["cloth"]);
  const alone = await answered(await asker(), question);
  let ended = 0;
  const broken = (post: (worker: AheadWorker, order: AheadOrder) => void): AheadWorker => {
    const worker: AheadWorker = {
      postMessage: (order) => post(worker, order),
      terminate: () => {
        ended += 1;
      },
      onmessage: null,
      onerror: null,
    };
    return worker;
  };
  const kinds = [
    () => broken(() => {}),
    () => broken((worker) => void wait(0).then(() => worker.onerror?.({}))),
    () =>
      broken((worker, order) => {
        if (order && "from" in order)
          void wait(0).then(() =>
            worker.onmessage?.({ data: { id: order.id, from: order.from, worked: null } }),
          );
      }),
    () => {
      throw new Error("no worker can be made here");
    },
  ];
  for (const make of kinds) {
    const helpers = new Helpers(1, make, slowClock());
    expect(await answered(await asker(), question, helpers)).toBe(alone);
  }
  expect(ended).toBeGreaterThan(0);
});

test("short work is not given away, and one core has no helpers", async () => {
  let made = 0;
  const helpers = new Helpers(1, () => {
    made += 1;
    return helperWorker({} as never, 0, []);
  }, () => 0); // biome-ignore format: short
  await answered(await asker(), sweepOf(laidPeplum(), 7, 10, 1 / 8, ["cloth"]), helpers);
  expect(made).toBe(0);
  expect([undefined, 1, 2, 4, 16].map(helpersFor)).toEqual([0, 0, 1, 3, 3]);
});

test("a newer task ends the older one at the helper", async () => {
  const { Helper } = await helper();
  const told: AheadNews[] = [];
  const works = new Helper((news) => told.push(news), () => setImmediate()); // biome-ignore format: short
  const book = laidPeplum();
  const task = { book, varied: [cell(book, "depth")], watched: [cell(book, "cloth")] };
  void works.take({ id: 1, task });
  const first = works.take({ id: 1, from: 0, settings: [[8]] });
  void works.take({ id: 1, from: 1, settings: [[9]] });
  void works.take({ id: 2, task });
  void works.take({ id: 1, from: 2, settings: [[10]] });
  void works.take({ id: 2, from: 0, settings: [[8], [9]] });
  await first;
  expect(told.map(({ id, from, worked }) => [id, from, worked?.steps.length])).toEqual([[1, 0, 1], [2, 0, 2]]); // biome-ignore format: a list
  await works.take(null);
  await works.take({ id: 2, from: 2, settings: [[10]] });
  expect(told).toHaveLength(2);
});
