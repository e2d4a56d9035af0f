/** Long tests in a real browser, each a folder of tests: `npm run closing -- --kills 60`, `npm run lasting -- --minutes 3`; `--seed 7` repeats one. */
import { spawnSync } from "node:child_process";
import { parseArgs } from "node:util";
import { root } from "./build.mjs";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    kills: { type: "string", default: "200" },
    minutes: { type: "string", default: "10" },
    seed: { type: "string", default: String(Date.now() % 1_000_000) },
  },
});
const { status } = spawnSync(
  `${root}/node_modules/.bin/vitest`,
  ["run", "--config", "tests/closing/vitest.config.ts", `tests/${positionals[0]}/`],
  {
    cwd: root,
    stdio: ["ignore", "inherit", "inherit"],
    env: { ...process.env, KILLS: values.kills, MINUTES: values.minutes, SEED: values.seed },
  },
);
process.exit(status ?? 1);
