/** In which chunks the page's start is loaded. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Rolldown } from "vite";

const ROOT = join(import.meta.dirname, "../..").replaceAll("\\", "/");
const SOURCE = `${ROOT}/src`;

type ModuleContext = Parameters<Rolldown.CodeSplittingNameFunction>[1];

/** The modules that the page needs at its start: all that these import, directly or by another. */
function importedBy(context: ModuleContext, first: string, without: ReadonlySet<string> = new Set()) {
  const found = new Set<string>();
  const wanted = [first];
  for (let id = wanted.pop(); id !== undefined; id = wanted.pop()) {
    if (found.has(id) || without.has(id)) continue;
    found.add(id);
    wanted.push(...(context.getModuleInfo(id)?.importedIds ?? []));
  }
  return found;
}

/**
 * What the page needs at its start, in three chunks, each of which imports only those before it: what the
 * workers for lays need as well, what the other workers need as well, and the rest. Without these chunks
 * every dialog that is loaded later cuts the modules it shares with the page out of them, and many small
 * files pack worse.
 */
const START: readonly (readonly [chunk: string, entries: readonly string[]])[] = [
  ["lay", ["worker/worker.ts"]],
  [
    "engine",
    [
      ...readdirSync(SOURCE, { recursive: true, encoding: "utf8" })
        .map((path) => path.replaceAll("\\", "/"))
        .filter((path) => path.endsWith("-worker.ts") && !path.endsWith("service-worker.ts"))
        .sort(),
      // A worker loads these two when it is asked to write such a file.
      "exchange/write-xlsx.ts",
      "exchange/write-ods.ts",
    ],
  ],
  ["start", ["app/page.tsx"]],
];

let chunks: ReadonlyMap<string, string> | undefined;

function startChunks(context: ModuleContext): ReadonlyMap<string, string> {
  const reached = (entry: string, without?: ReadonlySet<string>) =>
    importedBy(context, `${SOURCE}/${entry}`, without);
  const first = reached("app/main.ts");
  const atStart = reached("app/page.tsx", first);
  // The page's first script and the workers share it, and neither needs the rest of the other.
  const found = new Map([[`${ROOT}/functions/phrase.ts`, "phrase"]]);
  // The styles of the first paint, which stand in the page itself (first-screen.ts).
  for (const id of first) if (id.endsWith(".css")) found.set(id, "first");
  for (const [chunk, entries] of START)
    for (const id of entries.flatMap((entry) => [...reached(entry)]))
      if (atStart.has(id) && !found.has(id)) found.set(id, chunk);
  return found;
}

/** The chunk of a module that the start needs; null for any other. */
export const startChunk: Rolldown.CodeSplittingNameFunction = (id, context) => {
  chunks ??= startChunks(context);
  return chunks.get(id) ?? null;
};
