/** `npm test`: installs, brings a Chromium and poppler when the machine has none, checks types and style, runs every test. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
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
const poppler = spawnSync("pdftoppm", ["-v"], { stdio: "ignore" });
if (poppler.error) {
  process.stdout.write("No poppler here: installing Debian's, for the tests of what is printed.\n");
  run("sh", "-c", "apt-get update -q && apt-get install -qy poppler-utils");
}
install();
// What was checked once is not checked again until it changes.
const checked = (project) => [
  "--incremental",
  "--tsBuildInfoFile",
  `${root}/node_modules/.cache/ellwand/${project}.tsbuildinfo`,
];
run(bin("tsc"), "-p", ".", ...checked("all"));
run(bin("tsc"), "-p", "functions", ...checked("functions"));
run(bin("biome"), "check", ".");
build("command");

// The counts are read from a report of its own, so that the last line can say them.
const folder = mkdtempSync(join(tmpdir(), "ellwand-tests-"));
const report = join(folder, "report.json");
const reporters = [
  "--reporter=default",
  `--reporter=${root}/src/setup/second-attempts.mjs`,
  "--reporter=json",
  `--outputFile.json=${report}`,
];
const { status } = spawnSync(bin("vitest"), ["run", ...reporters, ...process.argv.slice(2)], {
  cwd: root,
  stdio: ["ignore", "inherit", "inherit"],
});
if (existsSync(report)) {
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, "utf8"));
  process.stdout.write(`${numPassedTests} passed, ${numFailedTests} failed\n`);
}
rmSync(folder, { recursive: true, force: true });
process.exit(status ?? 1);
