/**
 * The language of a run of the command line. Modules with sentences are loaded after it is taken up, as their
 * constants are made when they are loaded.
 */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Language, phrase } from "../../functions/phrase.ts";
import { speak } from "../../functions/speech.ts";
import { chosenLanguage, ENGLISH } from "../languages/choose.ts";

const OPTION = "--language";

/** What is left of a command line, and what is wrong with its language; null when nothing is. */
interface Spoken {
  readonly args: readonly string[];
  readonly fault: string | null;
}

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Takes up the language of --language, else that of the environment, of the catalogues in a folder. What other
 * programs read is in English in every language: --json, --csv and the files of `export`.
 */
export function takeUpLanguage(typed: readonly string[], environment: Environment, folder: URL): Spoken {
  const { args, asked } = optionIn(typed);
  const there = languagesIn(folder);
  const isForPrograms = args[0] === "export" || args.some((arg) => arg === "--json" || arg === "--csv");
  const tag = chosenLanguage(there, [asked ?? localeOf(environment)], null);
  let fault: string | null = null;
  if (!isForPrograms && tag !== ENGLISH) {
    try {
      speak(JSON.parse(readFileSync(new URL(`${tag}.json`, folder), "utf8")) as Language);
    } catch (reason) {
      fault = phrase`the catalogue of ${tag} can't be read: ${(reason as Error).message}; --language ${ENGLISH} does without it`;
    }
  }
  if (asked !== null && tag === ENGLISH && !/^en(?:-|$)/i.test(asked))
    fault =
      asked === ""
        ? phrase`${OPTION} needs a language after it, such as ${OPTION} ${ENGLISH}`
        : phrase`there is no catalogue for the language "${asked}"; the languages are ${[ENGLISH, ...there].join(", ")}`;
  return { args, fault };
}

/** The words without the option, and its last value; null where it does not stand. */
function optionIn(typed: readonly string[]): { args: string[]; asked: string | null } {
  const args: string[] = [];
  let asked: string | null = null;
  for (let i = 0; i < typed.length; i++) {
    const arg = typed[i]!;
    if (arg === OPTION) asked = typed[++i] ?? "";
    else if (arg.startsWith(`${OPTION}=`)) asked = arg.slice(OPTION.length + 1);
    else args.push(arg);
  }
  return { args, asked: asked === null ? null : tagOf(asked) };
}

/** The tag of a locale as POSIX writes it: "de_CH.UTF-8" is "de-CH". */
const tagOf = (locale: string): string =>
  locale
    .trim()
    .replace(/[.@].*$/, "")
    .replaceAll("_", "-");

/** What the environment asks for: the first of these that is set decides (POSIX, chapter 8.2). */
const localeOf = ({ LC_ALL, LC_MESSAGES, LANG }: Environment): string =>
  tagOf(LC_ALL || LC_MESSAGES || LANG || ENGLISH);

/** The tags of the languages whose catalogues lie in a folder; none where there is no folder. */
function languagesIn(folder: URL): string[] {
  try {
    return readdirSync(fileURLToPath(folder)).flatMap((name) => /^([\w-]+)\.json$/.exec(name)?.[1] ?? []);
  } catch {
    return [];
  }
}
