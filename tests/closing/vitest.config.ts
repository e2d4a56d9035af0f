import { defineConfig } from "vitest/config";

/** Types and closes, crashes and kills: npm run closing. ROUNDS says how often each way, 20 times if it is not set. */
export default defineConfig({
  test: {
    root: ".",
    include: ["tests/closing/**/*.closing.ts"],
    testTimeout: 3_600_000,
    fileParallelism: false,
  },
});
