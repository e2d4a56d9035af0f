/** The catalogues of sentences, `src/languages/`: files of gettext (PO) whose sentences are in the ICU message format. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type GetTextTranslations, po } from "gettext-parser";
import type { Language, Translation } from "../../../functions/phrase.ts";
import { constantsOf, type Message, merged, messagesOf, SHARED } from "./messages.ts";
import { translationOf } from "./translation.ts";

/** Where sentences for a reader stand. */
const FOLDERS = [
  "functions",
  "src/book",
  "src/engine",
  "src/lay",
  "src/exchange",
  "src/paper",
  "src/store",
  "src/worker",
  "src/app",
  "src/command",
];

/** The catalogue without translations, from which a translator begins. */
export const TEMPLATE = "ellwand.pot";

/** All sentences of the program, in the order of their first files. */
export function allMessages(root: string): Message[] {
  const files = FOLDERS.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
      .filter((path) => /\.tsx?$/.test(path) && !path.endsWith(".d.ts"))
      .map((path) => `${folder}/${path.replaceAll("\\", "/")}`),
  ).sort();
  const read = (file: string) => readFileSync(join(root, file), "utf8");
  const shared = new Map(SHARED.flatMap((file) => constantsOf(file, read(file))));
  return merged(files.flatMap((file) => messagesOf(file, read(file), shared)));
}

/** The text of a catalogue: of the given translations those whose sentences there are, and every other sentence without one. */
export function catalogueText(messages: readonly Message[], known: GetTextTranslations | null): string {
  const translations: GetTextTranslations["translations"][string] = {};
  for (const { id, files, hint } of messages) {
    const reference = [...new Set([...(translations[id]?.comments?.reference?.split("\n") ?? []), ...files])];
    const msgstr = known?.translations[""]?.[id]?.msgstr ?? [""];
    translations[id] = {
      msgid: id,
      msgstr,
      comments: {
        reference: reference.join("\n"),
        flag: "icu-message-format",
        ...(hint && { extracted: hint }),
      },
    };
  }
  const headers = known?.headers ?? {
    "Project-Id-Version": "Ellwand",
    Language: "",
    "MIME-Version": "1.0",
    "Content-Type": "text/plain; charset=utf-8",
    "Content-Transfer-Encoding": "8bit",
  };
  return `${po.compile({ charset: "utf-8", headers, translations: { "": translations } }, { foldLength: 0 }).toString()}\n`;
}

/** A catalogue as the program loads it. Throws an error that names the catalogue when a translation does not fit its sentence. */
export function languageOf(tag: string, text: string, messages: readonly Message[]): Language {
  const written = po.parse(text).translations[""] ?? {};
  const phrases: Record<string, Language["phrases"][string]> = {};
  for (const { key, id, names, blanks } of messages) {
    const [translation = ""] = written[id]?.msgstr ?? [];
    if (translation === "") continue;
    try {
      // What the engine itself says ends with a full stop, and is put in other words: a refusal must not look like it.
      if (translation.endsWith(".") && !id.endsWith("."))
        throw new Error(`“${translation}” ends with a full stop, and the English sentence does not`);
      phrases[key] = within(blanks, translationOf(translation, names));
    } catch (fault) {
      throw new Error(`src/languages/${tag}.po: ${fault instanceof Error ? fault.message : fault}`);
    }
  }
  return { tag, direction: directionOf(tag), phrases };
}

function within([before, after]: Message["blanks"], translation: string | Translation): string | Translation {
  if (before + after === "") return translation;
  return typeof translation === "string" ? before + translation + after : [before, ...translation, after];
}

/** The scripts that are written from right to left. */
const FROM_RIGHT: ReadonlySet<string> = new Set(["Arab", "Hebr", "Thaa", "Syrc", "Nkoo", "Adlm", "Rohg"]);

/** The direction in which a language is written, by its usual script. */
export const directionOf = (tag: string): "ltr" | "rtl" =>
  FROM_RIGHT.has(new Intl.Locale(tag).maximize().script ?? "") ? "rtl" : "ltr";

/** The tags of the languages that have a catalogue. */
export const languages = (root: string): string[] =>
  readdirSync(join(root, "src/languages"))
    .filter((name) => name.endsWith(".po"))
    .map((name) => name.slice(0, -3))
    .sort();
