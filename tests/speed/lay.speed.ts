/**
 * Density of the lay against seconds, two threads, for the published sets: a table to keep and
 * compare. LAY_SECONDS=1,10 and LAY_SETS=albano,fu choose; the seed is 1 and 2.
 */
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, it } from "vitest";
import type { Lay, LayQuestion } from "../../functions/lay.ts";
import type { Wish } from "../../src/command/lay-threads.ts";
import { checkLay } from "../../src/lay/check.ts";
import { quickLay } from "../../src/lay/quick.ts";
import { innerLoop } from "../../src/setup/inner-loop.ts";
import { blobs } from "../src/lay/blobs.ts";
import { publishedQuestion } from "../src/lay/published.ts";

type Runner = (question: LayQuestion, wish: Wish) => Promise<Lay | { readonly refusal: string }>;

const seconds = (process.env.LAY_SECONDS ?? "1,10,60").split(",").map(Number);
const all = readdirSync(new URL("../src/lay/data/instances", import.meta.url)).map((file) =>
  file.slice(0, -5),
);
const sets = process.env.LAY_SETS?.split(",") ?? all;
const folder = mkdtempSync(join(tmpdir(), "lay-speed-"));
let run: Runner;

beforeAll(async () => {
  // Threads need plain JavaScript: the command's two files, built as they are for users.
  await build({
    configFile: false,
    plugins: [innerLoop],
    logLevel: "error",
    build: {
      ssr: true,
      outDir: folder,
      rollupOptions: {
        input: { threads: "src/command/lay-threads.ts", "search-thread": "src/command/search-thread.ts" },
        output: { entryFileNames: "[name].js" },
      },
    },
    ssr: { noExternal: true },
  });
  run = ((await import(/* @vite-ignore */ join(folder, "threads.js"))) as { searchOnThreads: Runner })
    .searchOnThreads;
});

afterAll(() => rmSync(folder, { recursive: true }));

async function density(question: LayQuestion, time: number): Promise<number> {
  const wish = { seconds: time, seed: 1, threads: 2, began: performance.now(), complain: console.error };
  const lay = await run(question, wish);
  if ("refusal" in lay) throw new Error(lay.refusal);
  const faults = checkLay(question, lay, 1e-5);
  if (faults.length > 0) throw new Error(faults.join("; "));
  return 100 * lay.density;
}

function print(
  title: string,
  heads: readonly string[],
  rows: readonly (readonly (string | number)[])[],
): void {
  const cell = (value: string | number) =>
    (typeof value === "number" ? value.toFixed(2) : value).padStart(10);
  const lines = [heads, ...rows].map((row) => row.map(cell).join(""));
  console.log([title, ...lines].join("\n"));
}

it("tells the density of the published sets against time", async () => {
  const rows: (string | number)[][] = [];
  for (const name of sets) {
    const question = publishedQuestion(name);
    const first = quickLay(question) as Lay;
    const row: (string | number)[] = [name, 100 * first.density];
    for (const time of seconds) row.push(await density(question, time));
    rows.push(row);
  }
  const garment = rows.filter(([name]) => ["albano", "dagli", "mao", "shirts"].includes(String(name)));
  if (garment.length === 4)
    rows.push([
      "mean of 4",
      ...[0, ...seconds].map((_, k) => garment.reduce((sum, row) => sum + Number(row[k + 1]), 0) / 4),
    ]);
  print("density in percent, two threads", ["", "at once", ...seconds.map((s) => `${s} s`)], rows);
});

it("tells what one-way nap costs", async () => {
  const rows: (string | number)[][] = [];
  for (const name of ["albano", "dagli", "mao", "shirts"]) {
    const both = await density(publishedQuestion(name, [0, 180]), 10);
    const one = await density(publishedQuestion(name, [0]), 10);
    rows.push([name, both, one, both - one]);
  }
  print("10 s, two threads", ["", "two ways", "one way", "cost"], rows);
});

it("tells how long the lay at once takes", () => {
  const rows = [
    [10, 1, 60],
    [15, 2, 60],
    [15, 2, 200],
    [60, 5, 60],
  ].map(([kinds, copies, points]) => {
    const question = blobs(kinds!, copies!, points!, 5);
    let lay = quickLay(question) as Lay;
    const rounds = kinds! * copies! > 100 ? 1 : 30;
    const began = performance.now();
    for (let k = 0; k < rounds; k++) lay = quickLay(question) as Lay;
    return [`${kinds! * copies!} × ${points}`, (performance.now() - began) / rounds, 100 * lay.density];
  });
  print("the lay at once: copies × points, milliseconds, density", ["", "ms", "percent"], rows);
});
