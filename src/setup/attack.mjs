/** `npm run attack`: random attacks for a minute, or as long as `-- --minutes 10` says. Ends with 1 on a finding. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { build, root } from "./build.mjs";

build("attack");
const { status } = spawnSync(
  process.execPath,
  [join(root, "dist/attack/program.js"), ...process.argv.slice(2)],
  {
    cwd: root,
    stdio: ["ignore", "inherit", "inherit"],
  },
);
process.exit(status ?? 1);
