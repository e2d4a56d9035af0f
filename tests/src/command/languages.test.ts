/** The command line for a reader of another language: its sentences are in it, and what other programs read is the same. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { VERBS } from "../../../src/command/main.ts";
import type { Io } from "../../../src/command/verb.ts";
import { builtIns } from "../../../src/engine/built-ins/all.ts";
import { EXAMPLE_CELLS } from "../../../src/engine/built-ins/built-in.ts";
import { DOCUMENTS } from "../../../src/paper/kinds.ts";
import { inLetters, madeUpLanguage, ownTexts, untranslated } from "../setup/made-up.ts";

const TAG = "en-XA";
const LETTERS = "абвгдежзийклмнопрстуфхцчшщ";
const folder = mkdtempSync(join(tmpdir(), "ellwand-"));
const catalogues = pathToFileURL(join(folder, "languages/"));
const BOOKS = ["peplum-bodice", "peplum-bodice-cm", "petticoat-and-cape", "whole-cast"].map(
  (name) => `templates/${name}.json`,
);
const own = ownTexts();
for (const { takes } of builtIns.values()) for (const name of Object.keys(takes)) own.add(name);
for (const text of EXAMPLE_CELLS.flat()) if (/[a-z]{2}/.test(text)) own.add(text);

beforeAll(() => {
  mkdirSync(catalogues);
  const language = madeUpLanguage(TAG, inLetters(LETTERS));
  writeFileSync(new URL(`${TAG}.json`, catalogues), JSON.stringify(language));
  const book = JSON.parse(readFileSync(BOOKS[0]!, "utf8"));
  writeFileSync(inFolder("trials.json"), JSON.stringify({ ...book, trials: TRIALS }));
  const pieces = [{ id: "yoke", quantity: 2, outline: SQUARE }];
  writeFileSync(inFolder("pieces.json"), JSON.stringify({ stripWidth: 30, pieces }));
});

// Other files of tests share the modules of this one, and their constants are in English.
afterAll(() => {
  rmSync(folder, { recursive: true });
  vi.resetModules();
});

type Environment = Readonly<Record<string, string>>;

/** Takes up the language of a command line, and what is left of it. */
async function taken(args: readonly string[], environment: Environment, from = catalogues) {
  vi.resetModules();
  const { takeUpLanguage } = await import("../../../src/command/language.ts");
  const spoken = takeUpLanguage(args, environment, from);
  const { spokenLanguage } = await import("../../../functions/phrase.ts");
  return { ...spoken, tag: spokenLanguage()?.tag ?? "en" };
}

interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  readonly files: Readonly<Record<string, string>>;
}

/** Runs command lines, all of them with modules that were loaded for the language of the first. */
async function runAll(lines: readonly (readonly string[])[], options: readonly string[]): Promise<Ran[]> {
  await taken([...(lines[0] ?? []), ...options], {});
  const { main } = await import("../../../src/command/main.ts");
  const { machine } = await import("../../../src/command/machine.ts");
  const all: Ran[] = [];
  for (const line of lines) {
    const [out, err]: [string[], string[]] = [[], []];
    const files: Record<string, string> = {};
    const io: Io = {
      ...machine,
      write: (path, content) => {
        files[path] = Buffer.from(content as string).toString("base64");
      },
      out: (text) => out.push(text),
      pass: (text) => out.push(text),
      err: (text) => err.push(text),
    };
    all.push({ status: await main(line, io), out: out.join("\n"), err: err.join("\n"), files });
  }
  return all;
}

test("the language is that of --language, else the first that is set of LC_ALL, LC_MESSAGES and LANG, else English", async () => {
  const tagOf = async (args: readonly string[], environment: Environment) =>
    (await taken(args, environment)).tag;
  expect(await tagOf(["check"], {})).toBe("en");
  expect(await tagOf(["check"], { LANG: "en_XA.UTF-8" })).toBe(TAG);
  expect(await tagOf(["check"], { LC_MESSAGES: "en_XA", LANG: "fr_FR" })).toBe(TAG);
  expect(await tagOf(["check"], { LC_ALL: "C", LANG: "en_XA" })).toBe("en");
  expect(await tagOf(["check"], { LC_ALL: "", LANG: "en_XA@euro" })).toBe(TAG);
  expect(await tagOf(["check"], { LANG: "fr_FR.UTF-8" })).toBe("en");
  expect(await tagOf(["check", "--language", "en", "book"], { LANG: "en_XA" })).toBe("en");
  expect(await tagOf(["check", "--language=en-XA"], { LC_ALL: "C" })).toBe(TAG);
  expect((await taken(["--language", "en_XA", "check", "b"], {})).args).toEqual(["check", "b"]);
});

test("a language without a catalogue, or with one that can't be read, is refused in one sentence", async () => {
  expect((await taken(["check", "--language", "fr"], {})).fault).toBe(
    'there is no catalogue for the language "fr"; the languages are en, en-XA',
  );
  expect((await taken(["check", "--language"], {})).fault).toMatch(/^--language needs a language after it/);
  expect((await taken(["check", "--language", "en-GB"], {})).fault).toBeNull();
  expect((await taken(["check"], { LANG: "fr" }, new URL("none/", catalogues))).fault).toBeNull();
  const broken = pathToFileURL(join(folder, "broken/"));
  mkdirSync(broken);
  writeFileSync(new URL("de.json", broken), "{");
  expect((await taken(["check"], { LANG: "de_DE" }, broken)).fault).toMatch(
    /^the catalogue of de can't be read: .*; --language en does without it$/,
  );
});

const DEPTH = ["--cell", "depth"];
const inFolder = (name: string): string => join(folder, name);
const TRIALS = ["Wq", "Zq"].map((title, i) => ({ title, cells: { "Draft!B2": String(27 + i) } }));
const SQUARE = [[0, 0], [9, 0], [9, 9], [0, 9]]; // biome-ignore format: points in pairs

/** Lines that a ready book answers: every one with WHOLE=1, though the whole cast, which takes long, is only checked. */
const ofBook = (book: string): string[][] => [
  ["calculate", book],
  ["check", book],
  ["check", book, "--set", "waist=1", "--set", "hip=-3"],
  ["draft", book, "--out", "pieces", "--worn"],
];
/** Quick lays do: what is searched for takes time, and no two runs find the same. */
const BRIEF = ["--seconds", "0"];
const LINES: readonly (readonly string[])[] = [
  ...BOOKS.slice(0, process.env.WHOLE ? 3 : 1).flatMap(ofBook),
  ...BOOKS.slice(1, process.env.WHOLE ? 4 : 3).map((book) => ["check", book]),
  ["print", BOOKS[2]!, "--out", "pattern.pdf"],
  ["print", BOOKS[0]!, "--what", "all", "--out", "all.pdf"],
  ["next", BOOKS[0]!, "--out", "next.json"],
  ["compare", BOOKS[0]!, BOOKS[0]!],
  ["compare", BOOKS[0]!, BOOKS[1]!],
  ["compare", inFolder("trials.json")],
  ["lay", inFolder("pieces.json"), "--seconds", "0", "--threads", "0", "--svg", "lay.svg"],
  ["explain", BOOKS[0]!, "hem"],
  ["explain", BOOKS[1]!, "hem"],
  ["functions"],
  ["functions", "SPREAD_PER_GAP"],
  ["functions", "SUMIF"],
  ["functions", "--out", "help", "--unit", "cm"],
  ["calculate", "--formula", "=CAP_CHECK(50;48;3;2)"],
  ["calculate", "--formula", "=CUFF(4;20;3)"],
  [
    "vary",
    BOOKS[0]!,
    ...DEPTH,
    "--from",
    "8",
    "--to",
    "10",
    "--step",
    "1",
    "--watch",
    "hem,cloth_length_a,waist",
    ...BRIEF,
  ],
  [
    "vary",
    BOOKS[0]!,
    ...DEPTH,
    "--from",
    "-8",
    "--to",
    "10",
    "--step",
    "9",
    "--watch",
    "hem,stock_check",
    ...BRIEF,
  ],
  ["solve", BOOKS[0]!, ...DEPTH, "--make", "hem", "--atmost", "80"],
  [
    "solve",
    BOOKS[0]!,
    ...DEPTH,
    "--from",
    "8",
    "--to",
    "10",
    "--step",
    "1",
    "--make",
    "cloth_length_a",
    "--minimise",
    ...BRIEF,
  ],
  ["solve", BOOKS[0]!, ...DEPTH, "--make", "hem", "--atmost", "1"],
  ["begin", "templates/garments/gored-skirt.json", "--unit", "cm"],
  [
    "begin",
    "templates/garments/gored-skirt.json",
    ...["27", "39", "8", "38"].flatMap((answer, i) => [
      "--answer",
      `${["waist", "hip", "hip_drop", "skirt_length"][i]}=${answer}`,
    ]),
    "--out",
    "skirt.json",
  ],
  ["import", "tests/src/exchange/fittings.csv", "--unit", "cm", "--out", "fittings.json"],
  ["import", "tests/src/exchange/outlines/yoke.svg", "--unit", "cm", "--known", "width=84 cm"],
  ["import", "tests/src/exchange/outlines/yoke.svg", "--unit", "cm", "--scale", "2"],
];

/** Requests that are wrong. */
const WRONG: readonly (readonly string[])[] = [
  ...[
    ["chek"],
    ["nothing-like-it"],
    ["check"],
    ["check", "none.json"],
    ["check", "templates"],
    ["explain", BOOKS[0]!],
  ],
  ...[
    ["check", "package.json"],
    ["check", BOOKS[0]!, "extra"],
    ["check", BOOKS[0]!, "--colour"],
    ["check", BOOKS[0]!, "--set"],
  ],
  ...[
    ["check", BOOKS[0]!, "--set", "hip"],
    ["check", BOOKS[0]!, "--set", "hipp=3"],
    ["check", BOOKS[0]!, "--set", "qqqqq=3"],
  ],
  ...[
    ["calculate"],
    ["calculate", BOOKS[0]!, "--unit", "cm"],
    ["calculate", "--formula", ""],
    ["calculate", "--formula", "=1", "--unit", "m"],
  ],
  ...[
    ["calculate", BOOKS[0]!, "--show", ","],
    ["calculate", BOOKS[0]!, "--seconds", "-1"],
    ["calculate", "--formula", "=1", "--set", "a=1"],
  ],
  ...[
    ["functions", "SPREAD_PER_GAPS"],
    ["functions", "Q"],
    ["draft", BOOKS[0]!],
    ["print", BOOKS[0]!],
    ["next", BOOKS[0]!],
  ],
  ...[
    ["print", BOOKS[0]!, "--out", "a.pdf", "--what", "hat"],
    ["print", BOOKS[0]!, "--out", "a.pdf", "--what", "chart", "--scale", "1/2"],
  ],
  ...[
    ["export", BOOKS[0]!],
    ["vary", BOOKS[0]!],
    ["vary", BOOKS[0]!, ...DEPTH],
    ["vary", BOOKS[0]!, ...DEPTH, "--from", "wide"],
  ],
  ...[
    ["vary", BOOKS[0]!, ...DEPTH, ...DEPTH, "--from", "1"],
    ["vary", BOOKS[0]!, ...DEPTH, "--from", "1", "--to", "2"],
  ],
  ...[
    ["vary", BOOKS[0]!, ...DEPTH, "--from", "1", "--from", "2", "--to", "2"],
    ["solve", BOOKS[0]!, ...DEPTH],
  ],
  ...[
    ["solve", BOOKS[0]!, ...DEPTH, "--make", "hem"],
    ["solve", BOOKS[0]!, ...DEPTH, "--make", "hem", "--atmost", "far"],
  ],
  ...[
    ["solve", BOOKS[0]!, ...DEPTH, "--make", "hem", "--minimise", "--maximise"],
    ["begin"],
    ["begin", BOOKS[0]!],
  ],
  ...[
    ["begin", "templates/garments/gored-skirt.json", "--answer", "waist"],
    ["begin", "templates/garments/gored-skirt.json", "--answer", "qqqqq=1"],
  ],
  ...[
    ["compare", "-", "-"],
    ["compare", BOOKS[0]!, BOOKS[1]!, "--show", "hem"],
    ["import"],
    ["import", BOOKS[0]!],
    ["import", "package.json"],
  ],
  ...[
    ["import", "tests/src/exchange/fittings.csv", "--decimal", "x"],
    ["import", "tests/src/exchange/fittings.csv", "--dates", "x"],
  ],
  ...[
    ["import", "tests/src/exchange/outlines/yoke.svg", "--known", "x"],
    ["import", "tests/src/exchange/outlines/yoke.svg", "--known", "x/1=3 cm"],
  ],
  ...[
    ["import", "tests/src/exchange/outlines/yoke.svg", "--scale", "-1"],
    ["import", "tests/src/exchange/outlines/yoke.svg", "--inner", "x"],
  ],
  ...[
    ["lay"],
    ["lay", BOOKS[0]!],
    ["lay", "package.json"],
    ["lay", "README.md"],
    ["lay", "a", "b"],
    ["lay", "a", "--seed", "x"],
    ["lay", "a", "--seconds", "x"],
    ["lay", "a", "--gap"],
  ],
  ...[
    ["serve", "--port", "x"],
    ["serve", "more"],
  ],
];

const nameOf = (line: readonly string[]): string => line.join(" ");

/** What is typed, what names a verb, a choice or a field of a file, and the cells of the file that is imported. */
const ownOf = (line: readonly string[]): Set<string> =>
  new Set(
    [...own, ...NAMES, ...line.flatMap((word) => [word, ...word.split(/[=;,]/)])].filter((word) =>
      /[a-z]{2}/i.test(word),
    ),
  );

const NAMES = [
  ...VERBS.map(({ name }) => name),
  ...DOCUMENTS.map(({ name }) => name),
  ...[
    "point",
    "comma",
    "csv",
    "xlsx",
    "ods",
    "stripWidth",
    "pieces",
    "npm start",
    "yoke",
    "Wq",
    "Zq",
    "letter",
    "roll=36in",
  ],
  ...["fittings", "Date", "Seam", "Taken in"],
];

/** Options, files and fields stand in sentences as they are typed. */
const withoutTyped = (text: string): string =>
  text.replace(
    /(?<!\S)[([]*--[a-z][\w-]*|[\w./-]+\.(?:json|svg|csv|pdf|md)\b|\{[^}]*\}|`[^`]*`|\S+\|\S+/g,
    "§",
  );

/** The printed lines with English in them. */
const leftIn = (lines: readonly (readonly string[])[], ran: readonly Ran[]): string[] =>
  ran.flatMap((one, i) => {
    const isFormula = (text: string) => FORMULA.test(text);
    const texts = linesOf(one)
      .filter((text) => !isFormula(text))
      .map((text) => withoutTyped(text.replace(/^ {4}[a-z_]+ = /, "")));
    return untranslated(texts, ownOf(lines[i]!)).map((text) => `${nameOf(lines[i]!)}: ${text}`);
  });

/** A formula; a step of the Working has its name before it. */
const FORMULA = /^\s*(?:[a-z_]+ = )?=?[A-Z_]+\(/;

const linesOf = ({ out, err }: Ran): string[] => `${out}\n${err}`.split("\n");

test("what a run prints is in the reader's language, and its exit status is the same", async () => {
  const english = await runAll(LINES, []);
  const other = await runAll(LINES, ["--language", TAG]);
  expect(other.map(({ status }) => status)).toEqual(english.map(({ status }) => status));
  expect(other.map((one) => linesOf(one).length)).toEqual(english.map((one) => linesOf(one).length));
  expect(leftIn(LINES, other)).toEqual([]);
});

test("the help of every verb is in the reader's language", async () => {
  const lines = [["help"], [], ...VERBS.map(({ name }) => [name, "--help"])];
  const english = await runAll(lines, []);
  const other = await runAll(lines, ["--language", TAG]);
  const isTyped = (text: string) => TYPED.test(text);
  const helped = (all: readonly Ran[]) =>
    all.map((one) => ({
      ...one,
      out: linesOf(one)
        .filter((text) => !isTyped(text))
        .join("\n"),
    }));
  expect(helped(english).every(({ out }) => out.split("\n").length > 10)).toBe(true);
  expect(other.map((one) => linesOf(one).filter(isTyped))).toEqual(
    english.map((one) => linesOf(one).filter(isTyped)),
  );
  expect(leftIn(lines, helped(other))).toEqual([]);
});

/** A line of the help that is typed: a verb and its usage, or an example. */
const TYPED = new RegExp(`^  (?:ellwand )?(?:${VERBS.map(({ name }) => name).join("|")})(?: [^ ]|$)`);

test("why a request is wrong is said in the reader's language", async () => {
  const english = await runAll(WRONG, []);
  const other = await runAll(WRONG, ["--language", TAG]);
  expect(english.map(({ status, out }, i) => [nameOf(WRONG[i]!), status, out])).toEqual(
    WRONG.map((line) => [nameOf(line), 2, ""]),
  );
  expect(other.map(({ status, out }) => [status, out])).toEqual(WRONG.map(() => [2, ""]));
  expect(leftIn(WRONG, other)).toEqual([]);
});

test("what other programs read is the same byte for byte in every language", async () => {
  const lines = [
    ...LINES.filter((line) => !line.includes("--out")).map((line) => [...line, "--json"]),
    ["functions", "NONE", "--json"],
    ["help", "--json"],
    ["vary", BOOKS[0]!, "--cell", "depth", "--from", "8", "--to", "9", "--watch", "hem", "--csv"],
    ["export", BOOKS[0]!, "--to", "csv", "--page", "Cut", "--out", "cut.csv"],
  ];
  for (const line of lines) {
    const { tag, fault } = await taken([...line, "--language", TAG], { LANG: TAG });
    expect([nameOf(line), tag, fault]).toEqual([nameOf(line), "en", null]);
  }
  // A mixture of verbs, errors among them, at work.
  const some = lines.filter((line) => BOOKS[3] !== line[1]);
  const untimed = async (options: readonly string[]) =>
    (await runAll(some, options)).map((one) => ({ ...one, out: one.out.replace(/"seconds":[\d.]+/, "") }));
  expect(await untimed(["--language", TAG])).toEqual(await untimed([]));
});

test("the built program takes up its language before anything else is loaded", async () => {
  const run = (program: string, environment: Environment, ...args: string[]) =>
    spawnSync(process.execPath, [program, ...args], {
      encoding: "utf8",
      env: { PATH: process.env.PATH!, ...environment },
    });
  expect(run("src/setup/ellwand.mjs", {}, "help").status).toBe(0);
  const copy = join(folder, "built/command");
  cpSync("dist/command", copy, { recursive: true });
  cpSync(catalogues, join(copy, "languages"), { recursive: true });
  const program = join(copy, "main.js");
  const asked = ["functions", "SPREAD_PER_GAP"];
  const english = run(program, { LC_ALL: "C", LANG: "en_XA" }, ...asked);
  const other = run(program, { LANG: "en_XA.UTF-8" }, ...asked);
  expect([english.stderr, other.stderr, english.status, other.status]).toEqual(["", "", 0, 0]);
  expect(english.stdout).toMatch(/length, 3\/8 to/);
  const lines = other.stdout.split("\n").filter((line) => !/^\s*=?SPREAD_PER_GAP\(/.test(line));
  expect(untranslated(lines, own)).toEqual([]);
  // A constant that is made when its module is loaded, and a refusal.
  expect(other.stdout).toContain(inLetters(LETTERS)("length"));
  const refused = run(program, { LANG: "en_XA" }, "calculate", "none.json", "--language", "fr");
  expect([refused.status, refused.stdout]).toEqual([2, ""]);
  expect(refused.stderr).toMatch(/^there is no catalogue for the language "fr"[^\n]*\n$/);
  const asJson = run(program, {}, "calculate", "none.json", "--language", "fr", "--json");
  expect(JSON.parse(asJson.stdout)).toEqual({ error: refused.stderr.trimEnd() });
});
