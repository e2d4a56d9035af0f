/**
 * Puts the list of a build's files into its service worker. Every file is listed with its checksum,
 * so that a browser takes a build only when it has it whole.
 */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, sep } from "node:path";
import type { Plugin } from "vite";

/** The files of a build by their paths beside the page, each with its checksum as `integrity` has it; "" is the page. */
interface Built {
  readonly build: string;
  readonly files: Readonly<Record<string, string>>;
}

export const WORKER = "service-worker.js";

/** The list of a build, from its files by their paths beside the page. */
export function builtOf(contents: ReadonlyMap<string, Uint8Array>): Built {
  const files: Record<string, string> = {};
  for (const path of [...contents.keys()].sort()) {
    if (path === WORKER) continue;
    const sum = createHash("sha256").update(contents.get(path)!).digest("base64");
    files[path === "index.html" ? "" : path] = `sha256-${sum}`;
  }
  const build = createHash("sha256").update(JSON.stringify(files)).digest("hex").slice(0, 16);
  return { build, files };
}

/** Fills in the service worker when everything else is written. */
export const offline: Plugin = {
  name: "offline",
  apply: "build",
  writeBundle({ dir }) {
    const paths = readdirSync(dir!, { recursive: true, withFileTypes: true })
      .filter((file) => file.isFile())
      .map((file) => join(file.parentPath, file.name));
    const contents = new Map(
      paths.map((path) => [path.slice(dir!.length + 1).replaceAll(sep, "/"), readFileSync(path)]),
    );
    const code = contents.get(WORKER)!.toString();
    writeFileSync(
      join(dir!, WORKER),
      code.replace("__BUILT__", () => JSON.stringify(builtOf(contents))),
    );
  },
};
