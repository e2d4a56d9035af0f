/**
 * Leaves functions out of what the page loads first: the sewing functions that the first ready book does not
 * name, and most built-in functions. The page loads them soon after its start, or before it
 * opens a book that names one (src/engine/late.ts). In the source every function is there from the beginning.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Plugin } from "vite";

const ROOT = join(import.meta.dirname, "../..");

/** Where the functions of a first start are named: its book (src/app/files/ready.ts), and what the engine writes into formulas. */
const NAMED_IN = ["templates/peplum-bodice.json", "src/engine/fitted-cells.ts"];

/** The families that are there from the start whatever the first book names: the page itself writes them into formulas. */
const ALWAYS = ["tape"];

/** Where HyperFormula has its built-in functions. */
const PLUGINS = join(ROOT, "node_modules/hyperformula/es/interpreter/plugin");

/** Where HyperFormula has the English names of its functions. */
const ENGLISH = "node_modules/hyperformula/es/i18n/languages/enGB.mjs";

/** A function that has the same name in English: all have. */
const NAMED = /^ {4}(?:'([\w.]+)'|([\w.]+)): '([\w.]+)',?\n/gm;

/** HyperFormula's groups of functions that are there from the start: what the first book names, sums and rounding. */
const FIRST_PLUGINS: readonly string[] = [
  "AbsPlugin",
  "BooleanPlugin",
  "NumericAggregationPlugin",
  "RadiansPlugin",
  "RoundingPlugin",
  "SimpleArithmerticPlugin",
];

/** A group of functions as HyperFormula's list of all groups exports it. */
const EXPORTED = /^export \{ (\w+) \} from "\.\/(\w+)\.mjs";$/;

/** HyperFormula's other groups, each with its file. */
const latePlugins = (): { plugin: string; file: string }[] =>
  readFileSync(join(PLUGINS, "index.mjs"), "utf8")
    .split("\n")
    .flatMap((line) => {
      const [, plugin, name] = EXPORTED.exec(line) ?? [];
      return plugin && !FIRST_PLUGINS.includes(plugin)
        ? [{ plugin, file: join(PLUGINS, `${name}.mjs`) }]
        : [];
    });

interface Group {
  readonly implementedFunctions: object;
  readonly aliases?: object;
}

/** The names of the built-in functions in the late groups. */
async function lateBuiltIns(): Promise<string[]> {
  // Its groups import one another in a circle that only its own beginning undoes.
  await import("hyperformula");
  const names = await Promise.all(
    latePlugins().map(async ({ plugin, file }) => {
      const groups: Record<string, Group> = await import(pathToFileURL(file).href);
      const { implementedFunctions, aliases = {} } = groups[plugin]!;
      return [...Object.keys(implementedFunctions), ...Object.keys(aliases)];
    }),
  );
  return names.flat();
}

/** The files of sewing functions, from the folder of all functions: those of the start, and the others. */
export function sewingFiles(): { first: string[]; late: string[] } {
  const folder = join(ROOT, "functions");
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((path) => path.replaceAll("\\", "/"))
    .filter((path) => /^[a-z]+\/[A-Z][A-Z0-9_]*\.ts$/.test(path))
    .sort();
  const texts = NAMED_IN.map((path) => readFileSync(join(ROOT, path), "utf8")).join("\n");
  const named = new Set([...texts.matchAll(/([A-Z][A-Z0-9_]*)\(/g)].map(([, name]) => name));
  const isFirst = (path: string) => {
    const [family, name] = path.replace(/\.ts$/, "").split("/") as [string, string];
    return ALWAYS.includes(family) || named.has(name);
  };
  return { first: files.filter(isFirst), late: files.filter((path) => !isFirst(path)) };
}

/** The names of all functions that the page loads late. A sewing function may take the name of a built-in one. */
export const lateNames = async (): Promise<string[]> => [
  ...new Set([...sewingFiles().late.map(nameOf), ...(await lateBuiltIns())]),
];

/** HyperFormula's English names with each function's name once. Fails where a name is another one in English. */
export function shortEnglish(code: string): { code: string; names: string[] } {
  const [head, rest] = code.split("  functions: {\n") as [string, string];
  const end = rest.indexOf("  }");
  const found = [...rest.slice(0, end).matchAll(NAMED)].map(([, quoted, plain, name]) => [
    quoted ?? plain,
    name,
  ]);
  if (
    found.length < 400 ||
    found.some(([key, name]) => key !== name) ||
    /\S/.test(rest.slice(0, end).replace(NAMED, ""))
  )
    throw new Error("HyperFormula's English names have changed: see src/setup/late-functions.ts");
  const names = found.map(([, name]) => name!);
  const functions = `Object.fromEntries(${JSON.stringify(names.join(" "))}.split(" ").map((name) => [name, name]))`;
  return { code: `${head}  functions: ${functions}${rest.slice(end + "  }".length)}`, names };
}

/** The module with the names of all late functions: the built-in ones are in the English names. */
async function lateNamesModule(): Promise<string> {
  const { names } = shortEnglish(readFileSync(join(ROOT, ENGLISH), "utf8"));
  const late = await lateNames();
  const first = names.filter((name) => !late.includes(name));
  const more = late.filter((name) => !names.includes(name));
  return [
    `import english from ${JSON.stringify(join(ROOT, ENGLISH))};`,
    `const first = new Set(${JSON.stringify(first.join(" "))}.split(" "));`,
    `export const LATE_NAMES = [...Object.keys(english.functions).filter((name) => !first.has(name)), ...${JSON.stringify(more.join(" "))}.split(" ")];`,
  ].join("\n");
}

const nameOf = (path: string): string => /([A-Z0-9_]+)\.ts$/.exec(path)![1]!;

const list = (values: readonly string[]): string => JSON.stringify(values);

export const lateFunctions: Plugin = {
  name: "late-functions",
  apply: "build",
  enforce: "pre",
  async load(id) {
    const path = id.replaceAll("\\", "/");
    if (path.endsWith("/src/engine/late-names.ts")) return lateNamesModule();
    if (path.endsWith(`/${ENGLISH}`)) return shortEnglish(readFileSync(id, "utf8")).code;
    if (path.endsWith("/src/engine/late-parts.ts")) {
      const globs = sewingFiles().late.map((file) => `../../functions/${file}`);
      const plugins = latePlugins();
      const imports = plugins.map(({ plugin, file }) => `import { ${plugin} } from ${JSON.stringify(file)};`);
      return [
        ...imports,
        `const files = import.meta.glob(${list(globs)}, { eager: true });`,
        'export const declarations = Object.fromEntries(Object.entries(files).map(([path, file]) => [path.replace("../../functions", "."), file]));',
        `export const plugins = [${plugins.map(({ plugin }) => plugin).join(", ")}];`,
        'import { rarelyAsked } from "./rarely-asked.ts";',
        'import { amountsBelowZero } from "./amounts-below-zero.ts";',
        'import { causes } from "./cause-keys.ts";',
        'import { circularReferenceSentence } from "./circular-reference.ts";',
        'import { circularCells } from "./circular-cells.ts";',
        'import { culpritOf } from "./culprit.ts";',
        'import { dividesBy, divisorOf } from "./divisor.ts";',
        'import { namedFigures } from "./named-figures.ts";',
        "Object.assign(rarelyAsked, { amountsBelowZero, causes, circularCells, circularReferenceSentence, culpritOf, dividesBy, divisorOf, namedFigures });",
      ].join("\n");
    }
    if (path.endsWith("/src/engine/rarely-asked.ts")) return "export const rarelyAsked = {};";
    if (path.endsWith("/hyperformula/es/interpreter/plugin/index.mjs")) {
      const late = new Set(latePlugins().map(({ plugin }) => plugin));
      return readFileSync(id, "utf8")
        .split("\n")
        .filter((line) => !late.has(EXPORTED.exec(line)?.[1] ?? ""))
        .join("\n");
    }
    return null;
  },
  transform(code, id) {
    if (!id.replaceAll("\\", "/").endsWith("/functions/catalogue.ts")) return null;
    const first = sewingFiles().first.map((file) => `./${file}`);
    return { code: code.replace('"./*/[A-Z]*.ts"', list(first)), map: null };
  },
};
