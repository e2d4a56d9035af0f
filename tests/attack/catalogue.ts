/** All generators, found by folder. */
import type { Generator } from "./generator.ts";

const files = import.meta.glob<{ readonly generator: Generator }>("./generators/*.ts", { eager: true });

/** All generators, in the order of their files' names. */
export const generators: readonly Generator[] = Object.entries(files)
  .toSorted(([a], [b]) => (a < b ? -1 : 1))
  .map(([, file]) => file.generator);
