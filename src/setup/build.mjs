/**
 * Builds what is missing or older than its sources, so that a fresh clone needs no build command.
 * `build("command")` makes the command line, `build("app")` the page, `build("attack")` the attacks.
 */
import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "../..");

const RESULTS = {
  command: "dist/command/main.js",
  app: "dist/app/index.html",
  attack: "dist/attack/program.js",
};

/** The latest change of any file under a path. */
function newest(path) {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return readdirSync(path).reduce(
    (latest, name) => Math.max(latest, newest(join(path, name))),
    found.mtimeMs,
  );
}

function run(command, args) {
  execFileSync(command, args, { cwd: root, stdio: ["ignore", 2, 2] });
}

/** Installs the packages when they are not there, or not those of the lock file. */
export function install() {
  const mark = join(root, "node_modules/.package-lock.json");
  const lock = join(root, "package-lock.json");
  if (existsSync(mark) && statSync(mark).mtimeMs >= statSync(lock).mtimeMs) return;
  // Everything is built with development packages, also where NODE_ENV=production would have npm leave them out.
  run("npm", ["ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"]);
}

export function build(what) {
  install();
  const result = join(root, RESULTS[what]);
  const own = what === "attack" ? ["tests/attack"] : [];
  const sources = ["functions", "src", "templates", "vite.config.ts", "package-lock.json", ...own];
  if (existsSync(result) && sources.every((path) => newest(join(root, path)) <= statSync(result).mtimeMs))
    return;
  run(process.execPath, [
    join(root, "node_modules/vite/bin/vite.js"),
    "build",
    "--mode",
    what,
    "--logLevel",
    "warn",
  ]);
}
