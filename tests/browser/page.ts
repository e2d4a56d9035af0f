/** The real page in a real browser: built when its sources are newer, served from memory on this machine only. */
import { execFileSync } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, type BrowserContextOptions, chromium, type Locator, type Page } from "playwright-core";

const root = fileURLToPath(new URL("../..", import.meta.url));
const built = join(root, "dist/app");

/** Debian's browser and the switches that keep it to itself. */
export const ARGS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
const TYPES: Record<string, string> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".txt": "text/plain",
};

export interface Opened {
  readonly page: Page;
  /** What the page complained of: the console's errors and warnings, and errors that nothing caught. */
  readonly complaints: readonly string[];
}

export interface Visit {
  /**
   * Opens the page in a fresh profile: a first start. Lays are searched for by themselves only when a
   * test asks for it: no figure changes under the others. `prepare` is called before the page is
   * loaded; the page is open when what `shows` finds is there.
   */
  readonly open: (
    options?: BrowserContextOptions & { readonly searching?: boolean },
    prepare?: (page: Page, address: string) => Promise<unknown>,
    shows?: string,
  ) => Promise<Opened>;
  readonly end: () => Promise<void>;
}

/** A directory is made by one only: test files run side by side, and one of them builds. */
async function alone<T>(work: () => T): Promise<T> {
  const lock = join(root, "dist/.building");
  mkdirSync(join(root, "dist"), { recursive: true });
  for (;;) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      // A lock left behind by a run that was ended is taken over.
      const held = statSync(lock, { throwIfNoEntry: false });
      if (held && Date.now() - held.mtimeMs > 120_000) rmSync(lock, { recursive: true, force: true });
      await new Promise((done) => setTimeout(done, 100));
    }
  }
  try {
    return work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

function builtFiles(): Map<string, Buffer> {
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

export async function serve(): Promise<{ server: Server; address: string }> {
  const files = await alone(builtFiles);
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? "/", "http://here").pathname;
    const file = files.get(path === "/" ? "/index.html" : path);
    response.statusCode = file ? 200 : 404;
    response.setHeader("content-type", TYPES[extname(path || "/index.html")] ?? "text/html");
    response.end(file);
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` };
}

/** Starts a browser and a server; `end` stops both. */
export async function visit(): Promise<Visit> {
  const { server, address } = await serve();
  const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";
  const browser: Browser = await chromium.launch({ executablePath, args: ARGS });
  return {
    open: async ({ searching = false, ...options } = {}, prepare, shows = ".ht_master tbody td") => {
      const context = await browser.newContext({
        viewport: { width: 1360, height: 820 },
        permissions: ["clipboard-read", "clipboard-write"],
        ...options,
      });
      if (!searching)
        await context.addInitScript(() => {
          localStorage.setItem("ellwand.search-by-itself", "off");
        });
      const page = await context.newPage();
      const complaints: string[] = [];
      page.on("console", (said) => {
        if (said.type() === "error" || said.type() === "warning") complaints.push(said.text());
      });
      page.on("pageerror", (error) => complaints.push(String(error)));
      await prepare?.(page, address);
      await page.goto(address);
      await page.locator(shows).first().waitFor();
      return { page, complaints };
    },
    end: async () => {
      await browser.close();
      server.close();
    },
  };
}

/** A cell of the grid by its address; one that is on the screen, on a page that is not scrolled down. */
export function cell(page: Page, address: string): Locator {
  const [, letter = "A", row = "1"] = /^([A-Z])(\d+)$/.exec(address)!;
  const rows = page.locator(".ht_master tbody tr");
  return rows
    .nth(Number(row) - 1)
    .locator("td")
    .nth(letter.charCodeAt(0) - 65);
}
