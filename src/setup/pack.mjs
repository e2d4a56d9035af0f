/** Before `npm pack`: the command line, the page, and the library's two entries with their types in dist/package. */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build, root } from "./build.mjs";

const out = join(root, "dist/package");

function run(script, ...args) {
  const { status } = spawnSync(process.execPath, [join(root, "node_modules", script), ...args], {
    cwd: root,
    stdio: ["ignore", 2, 2],
  });
  if (status !== 0) process.exit(status ?? 1);
}

/** The declarations name each other as the sources do; a package's files end in .js. */
function nameAsBuilt(folder) {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) nameAsBuilt(path);
    else if (name.endsWith(".d.ts"))
      writeFileSync(path, readFileSync(path, "utf8").replace(/(from "\.[^"]*)\.ts"/g, '$1.js"'));
  }
}

build("command");
build("app");
rmSync(out, { recursive: true, force: true });
run("vite/bin/vite.js", "build", "--mode", "package", "--logLevel", "warn");
run("typescript/bin/tsc", "-p", "src/package");
nameAsBuilt(join(out, "types"));
