/** A browser as a person starts it, with a profile that outlives it. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium } from "playwright-core";
import { ARGS, CHROMIUM } from "../browser/chromium.ts";

/** The longest time in which a browser starts, in milliseconds, also beside other work. */
const STARTED = 60_000;

export class Profile {
  readonly #folder = mkdtempSync(join(tmpdir(), "ellwand-closing-"));
  #process: ChildProcess | undefined;
  #browser: Browser | undefined;

  /** The browser that runs with the profile; started when none runs. */
  async browser(): Promise<Browser> {
    if (this.#browser) return this.#browser;
    const port = join(this.#folder, "DevToolsActivePort");
    rmSync(port, { force: true });
    const args = [
      ...ARGS,
      `--user-data-dir=${this.#folder}`,
      "--remote-debugging-port=0",
      "--hide-crash-restore-bubble",
      "about:blank",
    ];
    this.#process = spawn(CHROMIUM, args, { stdio: "ignore", detached: true });
    const until = Date.now() + STARTED;
    while (Date.now() < until) {
      await new Promise((done) => setTimeout(done, 50));
      try {
        const address = `http://127.0.0.1:${readFileSync(port, "utf8").split("\n")[0]}`;
        this.#browser = await chromium.connectOverCDP(address);
        return this.#browser;
      } catch {
        // The browser does not listen yet.
      }
    }
    throw new Error(`the browser with the profile ${this.#folder} did not start within ${STARTED / 1000} s`);
  }

  /** Ends every process of the browser at once, as a loss of power does. */
  async kill(): Promise<void> {
    const { pid } = this.#process ?? {};
    if (this.#process === undefined || pid === undefined) return;
    const gone = new Promise((done) => this.#process!.once("exit", done));
    process.kill(-pid, "SIGKILL");
    await gone;
    await this.#browser?.close().catch(() => {});
    this.#browser = undefined;
    this.#process = undefined;
  }

  async remove(): Promise<void> {
    await this.kill();
    rmSync(this.#folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}
