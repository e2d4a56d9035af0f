/** One built page and one Chromium for all tests of a run: the page is served from memory, on this machine only. */
import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    /** Where the page is served. */
    readonly address: string;
    /** Where playwright-core connects to the Chromium that runs. */
    readonly endpoint: string;
  }
}

const root = fileURLToPath(new URL("../..", import.meta.url));
const built = join(root, "dist/app");

/** Debian's browser, or the one that CHROMIUM names. */
export const CHROMIUM = process.env.CHROMIUM ?? "/usr/bin/chromium";

/**
 * What the browser leaves out. The two popups of its address bar, which no test sees, begin a process for every
 * window. The others are those that playwright-core turns off: of two such switches the browser heeds the last.
 */
const WITHOUT = [
  "WebUIOmniboxPopup",
  "WebUIOmniboxAimPopup",
  "AimEnabled",
  "AvoidCorsURLLoaderRestartOnRedirect",
  "AvoidUnnecessaryBeforeUnloadCheckSync",
  "DestroyProfileOnBrowserClose",
  "HttpsFirstBalancedModeAutoEnable",
  "HttpsUpgrades",
  "LensOverlay",
  "MediaRouter",
  "NetworkTimeServiceQuerying",
  "OptimizationHints",
  "PaintHolding",
  "PreconnectToSearch",
  "ThirdPartyStoragePartitioning",
];

/** The switches that keep the browser to itself. */
export const ARGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  `--disable-features=${WITHOUT.join(",")}`,
];

const TYPES: Record<string, string> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".txt": "text/plain",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

/** Builds the page when its sources are newer, and reads it: each file under its path on the server. */
export function builtFiles(): Map<string, Buffer> {
  const code = `import("./src/setup/build.mjs").then(({ build }) => build("app"))`;
  execFileSync(process.execPath, ["-e", code], {
    cwd: root,
    stdio: ["ignore", "ignore", "inherit"],
    // The runner sets it to "test", and React would be built for development.
    env: { ...process.env, NODE_ENV: "production" },
  });
  const files = readdirSync(built, { recursive: true, withFileTypes: true }).filter((file) => file.isFile());
  return new Map(
    files.map((file) => {
      const path = join(file.parentPath, file.name);
      return [`/${path.slice(built.length + 1)}`, readFileSync(path)];
    }),
  );
}

/** A server of files in memory; `onMissing` is called with the path of what it does not have. `asIs`: the browser keeps nothing by itself. */
export const serverOf = (
  files: ReadonlyMap<string, Buffer>,
  { asIs = false, onMissing = (_path: string): void => {} } = {},
): Server =>
  createServer((request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://here");
    const path = pathname === "/" ? "/index.html" : pathname;
    const file = files.get(path);
    if (!file) onMissing(path);
    response.statusCode = file ? 200 : 404;
    response.setHeader("content-type", TYPES[extname(path)] ?? "text/html");
    // The names of scripts and styles change with what is in them: a profile reads and compiles each once.
    if (asIs) response.setHeader("cache-control", "no-store");
    else if (path.startsWith("/assets/")) response.setHeader("cache-control", "max-age=3600");
    response.end(file);
  });

/** Serves the built page from memory. */
export async function serve(): Promise<{ server: Server; address: string }> {
  const server = serverOf(builtFiles());
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
}

/** Vitest's global setup: starts the server and the browser, and gives what stops both. */
export default async function start(project: TestProject): Promise<() => Promise<void>> {
  const { server, address } = await serve();
  const browser = await chromium.launchServer({ executablePath: CHROMIUM, args: ARGS, host: "127.0.0.1" });
  project.provide("address", address);
  project.provide("endpoint", browser.wsEndpoint());
  return async () => {
    await browser.close();
    server.close();
  };
}
