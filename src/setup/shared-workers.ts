/**
 * Builds the page's workers as further entries of the page's own build, so that they load the engine, the
 * functions and the lay planner from the chunks that the page has. By itself Vite builds each worker
 * apart, with a copy of everything it imports.
 */
import { resolve } from "node:path";
import type { Plugin } from "vite";

const CREATED = /new URL\(\s*"(\.\/[a-z-]*worker\.ts)",\s*import\.meta\.url,?\s*\)/g;

export const sharedWorkers: Plugin = {
  name: "shared-workers",
  apply: "build",
  enforce: "pre",
  transform(code, id) {
    // What loads a chunk says why it could not, in a worker as on the page.
    if (id.includes("vite/preload-helper"))
      return { code: code.replaceAll("window.dispatchEvent", "globalThis.dispatchEvent"), map: null };
    if (!/\b(?:startWorker|new Worker)\(/.test(code)) return null;
    const shared = code.replace(CREATED, (_, path: string) => {
      const file = resolve(id, "..", path);
      const reference = this.emitFile({ type: "chunk", id: file });
      return `import.meta.ROLLUP_FILE_URL_${reference}`;
    });
    return { code: shared, map: null };
  },
};
