import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";

/** The status of `npm test` for a part of the tests, in a run of its own. */
function statusOf(part: string): number | null {
  const own = Object.entries(process.env).filter(([name]) => !/^(VITEST|VITE_|NODE_ENV$|TEST$)/.test(name));
  return spawnSync(process.execPath, ["src/setup/test.mjs", part], { env: Object.fromEntries(own) }).status;
}

// That it ends well when all is well, the run shows in which this test is.
test("npm test ends with a failure when there is one", () => {
  // No such file is a failure of the last command, after types, style and the build.
  expect(statusOf("tests/functions/no-such-file.test.ts")).toBe(1);
});
