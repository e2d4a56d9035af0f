/** The command line: finds the verb and runs it. An error is printed as one sentence, never as a stack trace. */

import { nearestWord } from "../../functions/nearest-word.ts";
import { phrase } from "../../functions/phrase.ts";
import { version } from "../../package.json";
import { begin } from "./begin.ts";
import { calculate } from "./calculate.ts";
import { check } from "./check.ts";
import { compare } from "./compare.ts";
import { draft } from "./draft.ts";
import { explain } from "./explain.ts";
import { exportBook } from "./export.ts";
import { functions } from "./functions.ts";
import { importFile } from "./import.ts";
import { lay } from "./lay.ts";
import { machine } from "./machine.ts";
import { next } from "./next.ts";
import { print } from "./print.ts";
import { serve } from "./serve.ts";
import { solve } from "./solve.ts";
import { vary } from "./vary.ts";
import { type Io, type Verb, Wrong } from "./verb.ts";

export const VERBS: readonly Verb[] = [
  begin,
  calculate,
  explain,
  check,
  functions,
  vary,
  solve,
  compare,
  next,
  lay,
  draft,
  exportBook,
  importFile,
  print,
  serve,
];

const usageOf = ({ name, usage, about }: Verb): string => `  ${name} ${usage}\n      ${about}`;

const statusesOf = ({ problems }: Verb): [status: number, means: string][] => [
  [0, phrase`done`],
  ...(problems ? [[1, problems] as [number, string]] : []),
  [2, phrase`the request was wrong; a sentence on standard error says why`],
];

/** One verb: its options, examples, output and exit statuses. */
function helpOf(verb: Verb): string {
  const options = Object.entries(verb.options).map(
    ([name, { value, about }]) => [`--${name}${value ? ` ${value}` : ""}`, about] as const,
  );
  const width = Math.max(...options.map(([option]) => option.length));
  return [
    usageOf(verb),
    "",
    phrase`Options:`,
    ...options.map(([option, about]) => `  ${option.padEnd(width)}  ${about}`),
    "",
    phrase`Examples:`,
    ...verb.examples.map((example) => `  ellwand ${example}`),
    "",
    phrase`Writes: ${verb.writes}`,
    "",
    phrase`Exit status:`,
    ...statusesOf(verb).map(([status, means]) => `  ${status}  ${means}`),
  ].join("\n");
}

/** A verb's help as data. */
const helpData = (verb: Verb) => ({
  name: verb.name,
  usage: verb.usage,
  about: verb.about,
  options: Object.entries(verb.options).map(([name, { value, about }]) => ({
    option: `--${name}`,
    ...(value && { value }),
    about,
  })),
  examples: verb.examples,
  writes: verb.writes,
  exits: Object.fromEntries(statusesOf(verb)),
});

/** What the program can do, or one verb of it. */
function help(verbs: readonly Verb[], json: boolean): string {
  if (json) return JSON.stringify(verbs.map(helpData), null, 2);
  return [
    phrase`Ellwand: from tape to cut.`,
    "",
    ...(verbs.length === 1 ? verbs.map(helpOf) : verbs.map(usageOf)),
    "",
    phrase`${"BOOK"} is a book's file, ${"-"} for standard input. ${"--version"} prints the version. ${"--language XX"} speaks another language, for which there is a catalogue, than ${"LC_ALL"}, ${"LC_MESSAGES"} or ${"LANG"} says.`,
  ].join("\n");
}

function verbCalled(word: string): Verb {
  const names = VERBS.map(({ name }) => name);
  const verb = VERBS.find(({ name }) => name === word);
  if (verb) return verb;
  const near = nearestWord(word, names);
  throw new Wrong(
    near
      ? phrase`there is no command "${word}"; is ${near} meant?`
      : phrase`there is no command "${word}"; the commands are ${names.join(", ")}`,
  );
}

const asksHelp = (word: string): boolean => word === "--help" || word === "-h";

/** Runs one command and gives its exit status. */
export async function main(args: readonly string[], io: Io = machine): Promise<number> {
  const json = args.includes("--json");
  const [word, ...rest] = args[0] === "--json" ? [...args.slice(1), "--json"] : args;
  try {
    if (word === undefined || word === "--json" || word === "help" || asksHelp(word)) {
      const about = rest.find((arg) => !arg.startsWith("-"));
      io.out(help(about === undefined ? VERBS : [verbCalled(about)], json));
      return word === undefined || word === "--json" ? 2 : 0;
    }
    if (word === "version" || word === "--version") {
      io.out(json ? JSON.stringify({ version }) : version);
      return 0;
    }
    const verb = verbCalled(word);
    if (rest.some(asksHelp)) {
      io.out(help([verb], json));
      return 0;
    }
    return await verb.run(rest, io);
  } catch (reason) {
    const sentence =
      reason instanceof Wrong
        ? reason.message
        : phrase`this failed unexpectedly (${(reason as Error).message})`;
    return refuse(sentence, json, io);
  }
}

/** Says why the request is wrong, and gives the exit status. */
export function refuse(sentence: string, json: boolean, io: Io = machine): 2 {
  if (json) io.out(JSON.stringify({ error: sentence }));
  else io.err(sentence);
  return 2;
}
