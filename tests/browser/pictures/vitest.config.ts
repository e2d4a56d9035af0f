import { defineConfig } from "vitest/config";

/** Makes the README's pictures anew: npm run pictures */
export default defineConfig({
  test: {
    root: ".",
    include: ["tests/browser/pictures/pictures.ts"],
    globalSetup: "tests/browser/chromium.ts",
    testTimeout: 60_000,
  },
});
