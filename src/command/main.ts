/** The command line: finds the verb and runs it. What goes wrong is one sentence, never a stack of lines. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { nearest } from "../engine/nearest.ts";
import { calculate } from "./calculate.ts";
import { check } from "./check.ts";
import { compare } from "./compare.ts";
import { draft } from "./draft.ts";
import { explain } from "./explain.ts";
import { functions } from "./functions.ts";
import { lay } from "./lay.ts";
import { solve } from "./solve.ts";
import { vary } from "./vary.ts";
import { type Io, type Verb, Wrong } from "./verb.ts";

const VERBS: readonly Verb[] = [calculate, explain, check, functions, vary, solve, compare, lay, draft];

/** The machine itself. */
const machine: Io = {
  read(path) {
    try {
      return readFileSync(path === "-" ? 0 : path, "utf8");
    } catch (reason) {
      const { code } = reason as NodeJS.ErrnoException;
      const why =
        code === "ENOENT"
          ? "there is no such file"
          : code === "EISDIR"
            ? "it is a folder"
            : `it can't be read (${code})`;
      throw new Wrong(`${path}: ${why}`);
    }
  },
  write(path, content) {
    try {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, content);
    } catch (reason) {
      throw new Wrong(`${path} can't be written (${(reason as NodeJS.ErrnoException).code})`);
    }
  },
  out: (text) => process.stdout.write(`${text}\n`),
  err: (text) => process.stderr.write(`${text}\n`),
};

const usage = (): string =>
  [
    "Ellwand: from tape to cut.",
    "",
    ...VERBS.map(({ name, usage: use, about }) => `  ${name} ${use}\n      ${about}`),
  ].join("\n");

/** Runs one command and gives its exit status. */
export async function main(args: readonly string[], io: Io = machine): Promise<number> {
  const [word, ...rest] = args;
  if (word === undefined || word === "help" || word === "--help") {
    io.out(usage());
    return word === undefined ? 2 : 0;
  }
  try {
    const verb = VERBS.find(({ name }) => name === word);
    if (!verb) {
      const near = nearest(
        word,
        VERBS.map(({ name }) => name),
      );
      throw new Wrong(
        `"${word}" is no command${near ? `; is ${near} meant?` : `; there are ${VERBS.map(({ name }) => name).join(", ")}`}`,
      );
    }
    if (rest.includes("--help")) {
      io.out(`${verb.name} ${verb.usage}\n${verb.about}`);
      return 0;
    }
    return await verb.run(rest, io);
  } catch (reason) {
    const sentence =
      reason instanceof Wrong ? reason.message : `this failed unexpectedly (${(reason as Error).message})`;
    if (rest.includes("--json")) io.out(JSON.stringify({ error: sentence }));
    else io.err(sentence);
    return 2;
  }
}
