/**
 * What-if questions over laid cloth in the page's own worker in Chromium: alone, and with helpers that work
 * settings ahead, in turns, until the answer by quick lays is whole. Each time another range, so that no lay is
 * known. One helper for two cores, up to three. Goals: 500 ms for the sweep, 300 ms for a solution.
 */
import { readdirSync, readFileSync } from "node:fs";
import { it } from "vitest";
import { lookUp } from "../../src/book/names.ts";
import { readBook } from "../../src/book/read.ts";
import type { Question } from "../../src/engine/question.ts";
import type { Watched } from "../../src/engine/sweep.ts";
import { open } from "../browser/page.ts";
import { print, told } from "./heard.ts";

const TURNS = Number(process.env.TURNS ?? 6);

const reading = readBook(
  readFileSync(new URL("../../templates/peplum-bodice.json", import.meta.url), "utf8"),
);
if ("reason" in reading) throw new Error(reading.reason);
const { book } = reading;
const depth = lookUp(book, "depth")!;
const cloth: Watched = { place: lookUp(book, "cloth_length_a")!, label: "cloth_length_a", kind: "length" };

let shift = 0;
const from = () => {
  shift += 1 / 1024;
  return 7 + shift;
};

const QUESTIONS: Record<string, () => Question> = {
  "sweep of 200 steps": () => {
    const first = from();
    const spans = [{ from: first, to: first + 199 / 32, step: 1 / 32 }];
    return { is: "sweep", book, varied: [depth], spans, watched: [cloth], withoutThresholds: true };
  },
  "solve, just 45": () => {
    const spans = [{ from: from(), to: 14, step: 1 / 8 }];
    return {
      is: "solve",
      book,
      varied: [depth],
      spans,
      make: cloth,
      aim: { is: "equal", value: 45 },
      least: false,
    };
  },
};

it("answers with and without helpers", async () => {
  const page = await open();
  const assets = readdirSync(new URL("../../dist/app/assets", import.meta.url));
  const file = assets.find((name) => /^question-worker-.*\.js$/.test(name))!;
  /** Begins a worker that takes the machine to have so many cores. */
  const begin = (cores: number) =>
    page.evaluate(
      ({ file, cores }) => {
        const address = new URL(`assets/${file}`, location.href).href;
        const text = `Object.defineProperty(navigator, "hardwareConcurrency", { value: ${cores} });
          const waiting = []; self.onmessage = (event) => waiting.push(event);
          import(${JSON.stringify(address)}).then(() => { for (const one of waiting) self.onmessage(one); });`;
        const worker = new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })), {
          type: "module",
        });
        Object.assign(globalThis, { [`worker${cores}`]: worker });
      },
      { file, cores },
    );
  const ask = (cores: number, question: Question) =>
    page.evaluate(
      ({ cores, question }) =>
        new Promise<number>((resolve, reject) => {
          const worker = (globalThis as unknown as Record<string, Worker>)[`worker${cores}`]!;
          const began = performance.now();
          worker.onerror = ({ message }) => reject(new Error(message));
          worker.onmessage = ({ data: { news } }) => {
            if ("problem" in news) reject(new Error(news.problem));
            if ("settled" in news) resolve(performance.now() - began);
          };
          worker.postMessage({ id: Math.random(), question });
        }),
      { cores, question },
    );
  const CORES = [1, 2, 3, 4];
  for (const cores of CORES) await begin(cores);
  const rows: string[][] = [["ms, median / p95", "alone", "1 helper", "2 helpers", "3 helpers"]];
  for (const [title, question] of Object.entries(QUESTIONS)) {
    const times = new Map(CORES.map((cores) => [cores, [] as number[]]));
    for (let turn = -1; turn < TURNS; turn += 1)
      for (const cores of CORES) {
        const took = await ask(cores, question());
        if (turn >= 0) times.get(cores)!.push(took);
      }
    rows.push([title, ...CORES.map((cores) => told(times.get(cores)!))]);
  }
  print("What-if questions over laid cloth", rows);
});
