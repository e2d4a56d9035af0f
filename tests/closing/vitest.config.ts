import { defineConfig } from "vitest/config";

/** Long tests in a real browser, each started by a command of its own with settings: src/setup/long-test.mjs. */
export default defineConfig({
  test: {
    root: ".",
    include: ["tests/closing/**/*.closing.ts", "tests/lasting/**/*.lasting.ts"],
    globalSetup: "tests/browser/chromium.ts",
    testTimeout: 7_200_000,
    fileParallelism: false,
    disableConsoleIntercept: true,
  },
});
