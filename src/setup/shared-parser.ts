/**
 * Lets all engines share one parser of formulas. HyperFormula makes a parser for each engine, and three
 * quarters of the time that an empty engine takes are spent on its grammar, which is the same for all.
 * What belongs to one engine, its sheets and its functions, is given to the parser before each formula.
 */
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build, type Plugin, type Rolldown } from "vite";

const ROOT = join(import.meta.dirname, "../..");

/** Each text of the library's module and what takes its place. */
const CHANGES: readonly (readonly [from: string, to: string])[] = [
  [
    `    this.lexerConfig = buildLexerConfig(config);
    this.lexer = new FormulaLexer(this.lexerConfig);
    this.formulaParser = new FormulaParser(this.lexerConfig, this.resolveSheetReference);
`,
    `    const { lexerConfig, lexer, formulaParser } = parserFor(config);
    this.lexerConfig = {
      ...lexerConfig,
      errorMapping: config.errorMapping,
      functionMapping: config.translationPackage.buildFunctionMapping(),
    };
    this.lexer = lexer;
    this.formulaParser = formulaParser;
`,
  ],
  [
    "this.formulaParser.parseFromTokens(",
    `Object.assign(this.formulaParser, {
        lexerConfig: this.lexerConfig,
        resolveSheetReference: this.resolveSheetReference,
      }).parseFromTokens(`,
  ],
  [
    "export class ParserWithCaching {",
    `const parsers = new Map();

/** The parser for these signs: all that a lexer's configuration takes from the engine's, but for names of functions and errors. */
function parserFor(config) {
  const key = JSON.stringify([
    config.translationPackage.getFunctionTranslation("OFFSET"),
    config.ignoreWhiteSpace,
    config.arrayRowSeparator,
    config.arrayColumnSeparator,
    config.functionArgSeparator,
    config.decimalSeparator,
    config.maxColumns,
    config.maxRows,
  ]);
  let parser = parsers.get(key);
  if (!parser) {
    const lexerConfig = buildLexerConfig(config);
    parser = { lexerConfig, lexer: new FormulaLexer(lexerConfig), formulaParser: new FormulaParser(lexerConfig, () => undefined) };
    parsers.set(key, parser);
  }
  return parser;
}

export class ParserWithCaching {`,
  ],
];

/** The library's module with one parser for all; fails where the module is no longer as it was. */
export function withSharedParser(code: string): string {
  return CHANGES.reduce((now, [from, to]) => {
    if (now.split(from).length !== 2)
      throw new Error(
        `HyperFormula's ParserWithCaching has changed: see src/setup/shared-parser.ts (${from})`,
      );
    return now.replace(from, () => to);
  }, code);
}

export const sharedParser: Plugin = {
  name: "shared-parser",
  enforce: "pre",
  transform: (code, id) =>
    id.replaceAll("\\", "/").endsWith("/hyperformula/es/parser/ParserWithCaching.mjs")
      ? { code: withSharedParser(code), map: null }
      : null,
};

/** HyperFormula as the tests use it: one file, with the parser shared as on the page. Built when it is not there. */
async function engineForTests(): Promise<string> {
  const { version } = JSON.parse(readFileSync(join(ROOT, "node_modules/hyperformula/package.json"), "utf8"));
  const changes = createHash("sha256").update(JSON.stringify(CHANGES)).digest("hex").slice(0, 8);
  const folder = join(ROOT, "node_modules/.cache/ellwand");
  const file = join(folder, `hyperformula-${version}-${changes}.mjs`);
  if (existsSync(file)) return file;
  const built = (await build({
    configFile: false,
    root: ROOT,
    logLevel: "warn",
    plugins: [sharedParser],
    ssr: { noExternal: true },
    build: {
      ssr: join(ROOT, "node_modules/hyperformula/es/index.mjs"),
      write: false,
      rolldownOptions: { output: { codeSplitting: false } },
    },
  })) as Rolldown.RolldownOutput;
  mkdirSync(folder, { recursive: true });
  // Another run may read it at the same time: it is there whole or not at all.
  writeFileSync(`${file}.${process.pid}`, built.output[0].code);
  renameSync(`${file}.${process.pid}`, file);
  return file;
}

let engine: Promise<string> | undefined;

/** Gives the tests that HyperFormula. The scripts of setup, which read the library's own files, have the library itself. */
export const engineOfTests: Plugin = {
  name: "engine-of-tests",
  enforce: "pre",
  apply: "serve",
  async resolveId(id, importer) {
    if (id !== "hyperformula" || importer?.startsWith(import.meta.dirname)) return null;
    engine ??= engineForTests();
    return { id: await engine, external: true };
  },
};
