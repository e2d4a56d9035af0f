/** `npm run closing`: ends the page in the middle of the work, 200 times or as often as `-- --kills 60` says. */
import { spawnSync } from "node:child_process";
import { parseArgs } from "node:util";
import { root } from "./build.mjs";

const { values } = parseArgs({
  options: {
    kills: { type: "string", default: "200" },
    seed: { type: "string", default: String(Date.now() % 1_000_000) },
  },
});
const { status } = spawnSync(
  `${root}/node_modules/.bin/vitest`,
  ["run", "--config", "tests/closing/vitest.config.ts"],
  {
    cwd: root,
    stdio: ["ignore", "inherit", "inherit"],
    env: { ...process.env, KILLS: values.kills, SEED: values.seed },
  },
);
process.exit(status ?? 1);
