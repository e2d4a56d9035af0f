/** The order in which the test files are run: the longest first, so that none of them is left to run alone at the end. */
import { statSync } from "node:fs";
import { relative } from "node:path";
import type { TestSequencer, TestSpecification } from "vitest/node";

/** Files that wait or calculate for long although they are small. */
const LONG: readonly string[] = [
  "browser/lay-by-itself.test.ts",
  "src/setup/test.test.ts",
  "src/command/solve.test.ts",
  "src/engine/solve.test.ts",
];

/** How soon a file is run: files of `LONG` before all others, then the larger ones. */
function weight({ moduleId }: TestSpecification): number {
  const name = relative(import.meta.dirname, moduleId);
  return LONG.includes(name) ? Number.POSITIVE_INFINITY : statSync(moduleId).size;
}

export class LongestFirst implements TestSequencer {
  /** The tests of the page come first: they wait for the browser, and the others fill the cores until they end. */
  sort(files: TestSpecification[]): TestSpecification[] {
    const sized = files.map((file) => ({ file, name: file.project.name, weight: weight(file) }));
    return sized
      .sort((a, b) =>
        a.name !== b.name ? (a.name < b.name ? -1 : 1) : a.weight === b.weight ? 0 : b.weight - a.weight,
      )
      .map(({ file }) => file);
  }

  shard(files: TestSpecification[]): TestSpecification[] {
    return files;
  }
}
