/** Reads a verb's options. Node's own parser does the work; its errors are put into plain sentences. */
import { type ParseArgsConfig, parseArgs } from "node:util";
import { phrase } from "../../functions/phrase.ts";
import { isUnit, UNITS, type Unit } from "../../functions/units.ts";
import { Wrong } from "./verb.ts";

type Options = NonNullable<ParseArgsConfig["options"]>;

/** The options, and the words that are not options, of which there may be at most `words`. */
export function readOptions<T extends Options>(args: readonly string[], options: T, words: number) {
  try {
    // A negative number after an option is its value, not an option.
    const joined = args.flatMap((arg, i) => {
      if (/^-[\d.]/.test(arg) && /^--[a-z]/.test(args[i - 1] ?? "")) return [];
      const next = args[i + 1];
      return /^--[a-z]+$/.test(arg) && next !== undefined && /^-[\d.]/.test(next)
        ? [`${arg}=${next}`]
        : [arg];
    });
    const read = parseArgs({ args: joined, options, allowPositionals: true, strict: true });
    if (read.positionals.length > words)
      throw new Wrong(phrase`"${read.positionals[words]!}" is one word more than this command takes`);
    return read;
  } catch (reason) {
    if (reason instanceof Wrong) throw reason;
    const message = (reason as Error).message;
    const unknown = /Unknown option '([^']+)'/.exec(message);
    if (unknown)
      throw new Wrong(
        phrase`this command has no option ${unknown[1]!}; its options are ${Object.keys(options)
          .map((name) => `--${name}`)
          .join(", ")}`,
      );
    const lacking = /Option '([^']+?)(?: <value>)?' argument missing/.exec(message);
    if (lacking) throw new Wrong(phrase`${lacking[1]!} needs a value after it`);
    throw new Wrong(message.split(/[.\n]/)[0]!);
  }
}

/** A verb without the book that it works on. */
export const needsBook = (verb: string): Wrong => new Wrong(phrase`${verb} needs a book's file`);

/** What was given for an option is not one of its choices. */
export const notOneOf = (option: string, choices: readonly string[], given: string): Wrong =>
  new Wrong(phrase`${option} must be one of ${choices.join(", ")}, not "${given}"`);

/** The unit of --unit. */
export function unitFrom(text: string): Unit {
  if (!isUnit(text)) throw notOneOf("--unit", UNITS, text);
  return text;
}
