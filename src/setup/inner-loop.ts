/**
 * Compiles the inner loop of the search for less cloth (src/lay/inner/program.ts) to WebAssembly, with the files of
 * src/lay/inner/simd in place of their plain twins. The compiler is AssemblyScript, whose language is TypeScript
 * with other types of numbers; nothing of its library goes into the result. What was compiled is kept under a name
 * made of its sources, since compiling takes two seconds.
 */
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { Plugin } from "vite";

const NAME = "virtual:inner-loop";
const ROOT = join(import.meta.dirname, "../..");
const SOURCES = join(ROOT, "src/lay/inner");
const KEPT = join(ROOT, "node_modules/.cache/ellwand");

const OPTIONS = [
  "-O3",
  "--runtime",
  "stub",
  "--enable",
  "simd",
  "--importMemory",
  "--noAssert",
  "--lowMemoryLimit",
];

/** The sources by name, the twins for WebAssembly in place of the plain ones. */
function sources(): { name: string; path: string; source: string }[] {
  const twins = join(SOURCES, "simd");
  const isProgram = (name: string) => name.endsWith(".ts") && !name.endsWith(".d.ts");
  return readdirSync(SOURCES)
    .filter(isProgram)
    .map((name) => {
      const twin = join(twins, name.replace(/ts$/, "as"));
      const path = existsSync(twin) ? twin : join(SOURCES, name);
      return { name, path, source: readFileSync(path, "utf8") };
    });
}

/** The module as bytes. */
async function compiled(): Promise<Uint8Array> {
  const files = new Map(sources().map(({ name, source }) => [name, source]));
  const { version } = JSON.parse(
    readFileSync(join(ROOT, "node_modules/assemblyscript/package.json"), "utf8"),
  ) as { version: string };
  const key = createHash("sha256").update(JSON.stringify([version, OPTIONS, [...files]]));
  const kept = join(KEPT, `inner-loop-${key.digest("hex").slice(0, 16)}.wasm`);
  if (existsSync(kept)) return readFileSync(kept);
  const { default: asc } = await import("assemblyscript/asc");
  let result: Uint8Array | undefined;
  const { error, stderr } = await asc.main(["program.ts", "--outFile", "program.wasm", ...OPTIONS], {
    // The compiler adds an ending to the names that have one in imports.
    readFile: (name) => files.get(basename(name).replace(/(\.ts)+$/, ".ts")) ?? null,
    writeFile: (_, contents) => {
      if (typeof contents !== "string") result = contents;
    },
    listFiles: () => [],
  });
  if (error || !result)
    throw new Error(`The inner loop can't be compiled: ${stderr.toString()}`, { cause: error });
  mkdirSync(KEPT, { recursive: true });
  // Another process may read it meanwhile: it gets its name once it is whole.
  const whole = `${kept}.${process.pid}`;
  writeFileSync(whole, result);
  renameSync(whole, kept);
  return result;
}

/** Gives the search its inner loop. */
export const innerLoop: Plugin = {
  name: "inner-loop",
  resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
  async load(id) {
    if (id !== `\0${NAME}`) return undefined;
    for (const { path } of sources()) this.addWatchFile(path);
    return `export default ${JSON.stringify(Buffer.from(await compiled()).toString("base64"))};\n`;
  },
};
