/** `npm test`: installs, brings a Chromium when there is none, checks types and style, runs every test. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { build, install, root } from "./build.mjs";

/** Ends with the command's own status when it fails; what failed has said why. */
function run(command, ...args) {
  const { status } = spawnSync(command, args, { cwd: root, stdio: ["ignore", "inherit", "inherit"] });
  if (status !== 0) process.exit(status ?? 1);
}
const bin = (name) => `${root}/node_modules/.bin/${name}`;

const chromium = [
  process.env.CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
];
if (!chromium.some((path) => path && existsSync(path))) {
  process.stdout.write("No Chromium here: installing Debian's, for the tests of the page.\n");
  run("sh", "-c", "apt-get update -q && apt-get install -qy chromium");
}
install();
run(bin("tsc"), "-p", ".");
run(bin("tsc"), "-p", "functions");
run(bin("biome"), "check", ".");
build("command");
run(bin("vitest"), "run", ...process.argv.slice(2));
