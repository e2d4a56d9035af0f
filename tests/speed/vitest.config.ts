import { defineConfig } from "vitest/config";
import { innerLoop } from "../../src/setup/inner-loop.ts";

/** Runs the measurements, which take minutes and judge nothing: npx vitest run --config tests/speed/vitest.config.ts */
export default defineConfig({
  plugins: [innerLoop],
  test: {
    root: ".",
    include: ["tests/speed/**/*.speed.ts"],
    globalSetup: "tests/browser/chromium.ts",
    testTimeout: 3_600_000,
    fileParallelism: false,
  },
});
