/**
 * A cold start of the page from `npm start`'s server, on a slow line from one that packs what it sends, what it loads and what only when used, and
 * the command line from nothing to an answer. Goals: something to read in 0.5 s, ready in 1.5 s, at
 * most 485 kB gzip of scripts and styles, an answer in 0.5 s. STARTS=10 sets how often;
 * tests/browser/starting.test.ts holds the bytes of the first load.
 */
import { execFileSync, spawn } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, it } from "vitest";
import { ARGS } from "../browser/chromium.ts";
import { print, told } from "./heard.ts";

const STARTS = Number(process.env.STARTS ?? 7);
const root = fileURLToPath(new URL("../..", import.meta.url));

let address = "";
let end = () => {};

beforeAll(async () => {
  const env = { ...process.env, PORT: "4617", NODE_ENV: "production" };
  const server = spawn(process.execPath, ["src/setup/start.mjs"], { cwd: root, env });
  end = () => server.kill();
  address = await new Promise<string>((done, fail) => {
    server.stdout.on("data", (said: Buffer) => {
      const found = /http:\S+/.exec(String(said));
      if (found) done(found[0]);
    });
    server.on("exit", (code) => fail(new Error(`the server ended with ${code}`)));
  });
}, 120_000);
afterAll(() => end());

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html;charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
};

/** Serves the built page packed by gzip, as servers for slow lines do; `npm start` serves one machine, unpacked. */
async function packed(): Promise<{ readonly at: string; readonly close: () => void }> {
  const files = new Map<string, Buffer>();
  const server = createServer(({ url = "/" }, response) => {
    const path = `${root}dist/app${url === "/" ? "/index.html" : url}`;
    if (!existsSync(path)) return response.writeHead(404).end();
    if (!files.has(path)) files.set(path, gzipSync(readFileSync(path), { level: 9 }));
    const type = TYPES[extname(path)] ?? "application/octet-stream";
    return response.writeHead(200, { "Content-Type": type, "Content-Encoding": "gzip" }).end(files.get(path));
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const { port } = server.address() as AddressInfo;
  return { at: `http://127.0.0.1:${port}/`, close: () => server.closeAllConnections() };
}

/** Tells when the first cell of the grid is painted, what was asked for until then, and when the page has room for a key. */
function ready(): Promise<{ grid: number; free: number; loaded: string[] }> {
  return new Promise((done) => {
    const look = () => {
      if (!document.querySelector(".ht_master td")) return requestAnimationFrame(look);
      return requestAnimationFrame(() => {
        const grid = performance.now();
        const loaded = performance
          .getEntriesByType("resource")
          .filter(({ startTime }) => startTime < grid)
          .map(({ name }) => new URL(name).pathname.split("/").at(-1)!);
        setTimeout(() => done({ grid, free: performance.now(), loaded }));
      });
    };
    look();
  });
}

/** The lines and machines of a start: bytes a second, milliseconds to the server, how many times slower. */
const PLACES = {
  "this machine": null,
  "1.6 Mbit/s, 150 ms, a quarter of the speed": { line: 1_600_000 / 8, latency: 150, slower: 4 },
} as const;

it.each(Object.entries(PLACES))("a cold start: %s", { timeout: 600_000 }, async (where, place) => {
  const seen: { grid: number; free: number; painted: number; answered: number }[] = [];
  const server = place ? await packed() : { at: address, close: () => {} };
  const loaded = new Set<string>();
  for (let n = 0; n < STARTS; n += 1) {
    const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";
    const browser = await chromium.launch({ executablePath, args: ARGS });
    const page = await browser.newPage();
    if (place) {
      const { line, latency, slower } = place;
      const session = await page.context().newCDPSession(page);
      await session.send("Network.enable");
      await session.send("Network.emulateNetworkConditions", {
        offline: false,
        latency,
        downloadThroughput: line,
        uploadThroughput: line,
      });
      await session.send("Emulation.setCPUThrottlingRate", { rate: slower });
    }
    await page.goto(server.at, { waitUntil: "commit" });
    const { loaded: first, ...when } = await page.evaluate(ready);
    for (const name of first) loaded.add(name);
    const { painted, answered } = await page.evaluate(() => ({
      painted: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? Number.NaN,
      answered: (performance.getEntriesByType("navigation")[0] as PerformanceNavigationTiming).responseStart,
    }));
    seen.push({ ...when, painted, answered });
    await browser.close();
  }
  server.close();
  print(`a cold start from npm start's server, ${where}, a new browser each time, p50 / p95 in ms`, [
    ["the first response", "something to read", "the grid there", "ready for a key"],
    (["answered", "painted", "grid", "free"] as const).map((name) => told(seen.map((one) => one[name]))),
  ]);
  if (!place) sizes(loaded);
});

function sizes(loaded: ReadonlySet<string>): void {
  const folder = new URL("../../dist/app/assets/", import.meta.url);
  const files = readdirSync(folder).map((name) => ({
    name,
    kB: gzipSync(readFileSync(new URL(name, folder)), { level: 9 }).length / 1000,
    first: loaded.has(name),
  }));
  files.sort((a, b) => Number(b.first) - Number(a.first) || b.kB - a.kB);
  const sum = (list: typeof files) => list.reduce((all, { kB }) => all + kB, 0).toFixed(1);
  print("scripts and styles, kB gzip", [
    ["file", "kB", ""],
    ...files.map(({ name, kB, first }) => [name, kB.toFixed(1), first ? "at the start" : "when used"]),
    ["at the start", sum(files.filter(({ first }) => first)), "of 485"],
    ["when used", sum(files.filter(({ first }) => !first)), ""],
  ]);
}

it("the command line", () => {
  const program = "src/setup/ellwand.mjs";
  const commands = [
    ["calculate", "--formula", "=SPREAD_PER_GAP(16.5;23.5;5)"],
    ["calculate", "templates/peplum-bodice.json", "--json"],
    ["check", "templates/peplum-bodice.json"],
  ];
  const rows = commands.map((command) => {
    const once = () => {
      const began = performance.now();
      try {
        execFileSync(process.execPath, [program, ...command], { cwd: root, stdio: "ignore" });
      } catch (reason) {
        // A book with problems ends with 1.
        if ((reason as { status?: number }).status !== 1) throw reason;
      }
      return performance.now() - began;
    };
    once();
    return [command.join(" "), told(Array.from({ length: STARTS }, once))];
  });
  print("from the command to its answer, p50 / p95 in ms", [["ellwand", ""], ...rows]);
});
