/** Languages that nobody speaks, made of the catalogue, in which what is not translated stands out; and what stays English in them. */
import { readdirSync, readFileSync } from "node:fs";
import { type MessageFormatElement, parse, TYPE } from "@formatjs/icu-messageformat-parser";
import { printAST } from "@formatjs/icu-messageformat-parser/printer.js";
import { po } from "gettext-parser";
import { catalogue } from "../../../functions/catalogue.ts";
import type { Declaration } from "../../../functions/define.ts";
import { signature } from "../../../functions/help.ts";
import type { Language } from "../../../functions/phrase.ts";
import { allMessages, catalogueText, languageOf } from "../../../src/setup/strings/catalogues.ts";
import type { Message } from "../../../src/setup/strings/messages.ts";
import { modulesOf } from "../../../src/setup/strings/plugin.ts";

const PLAIN = "abcdefghijklmnopqrstuvwxyz";

/** Makes words up in these 26 letters, a third longer, as words of many languages are beside English. */
export const inLetters =
  (letters: string) =>
  (text: string): string =>
    text
      .toLowerCase()
      .replace(/[a-z]/g, (letter) => letters[PLAIN.indexOf(letter)]!)
      .replace(/\p{L}{4,}/gu, (word) => word + word.slice(0, Math.floor(word.length / 3)));

const inMadeUp = (
  elements: readonly MessageFormatElement[],
  madeUp: (text: string) => string,
): MessageFormatElement[] =>
  elements.map((element) => {
    if (element.type === TYPE.literal) return { ...element, value: madeUp(element.value) };
    if (element.type !== TYPE.plural) return element;
    const options = Object.entries(element.options).map(([way, { value }]) => [
      way,
      { value: inMadeUp(value, madeUp) },
    ]);
    return { ...element, options: Object.fromEntries(options) };
  });

const root = new URL("../../../", import.meta.url).pathname;

/** The text of the catalogue of a language that is made of it. */
function madeUpCatalogue(messages: readonly Message[], madeUp: (text: string) => string): string {
  const written = po.parse(catalogueText(messages, null));
  for (const message of Object.values(written.translations[""]!))
    if (message.msgid !== "")
      message.msgstr = [printAST(inMadeUp(parse(message.msgid, { ignoreTag: true }), madeUp))];
  return po.compile(written).toString();
}

/** A language made of the catalogue. */
export function madeUpLanguage(tag: string, madeUp: (text: string) => string): Language {
  const messages = allMessages(root);
  return languageOf(tag, madeUpCatalogue(messages, madeUp), messages);
}

/** The same as the modules that the page loads. */
export function madeUpModules(tag: string, madeUp: (text: string) => string): ReturnType<typeof modulesOf> {
  const messages = allMessages(root);
  return modulesOf(tag, madeUpCatalogue(messages, madeUp), messages);
}

/** Every text in a plain value, at any depth. */
const textsIn = (value: unknown, except: ReadonlySet<string> = new Set()): string[] =>
  typeof value === "string"
    ? [value]
    : typeof value === "object" && value
      ? Object.entries(value).flatMap(([key, one]) => [key, ...(except.has(key) ? [] : textsIn(one, except))])
      : [];

/** What a sewing function says of itself: the page translates it. */
const SAID: ReadonlySet<string> = new Set(["summary", "about", "because", "source", "cautions", "words"]);

/** What a function, its arguments, choices and headings are called, and what its examples hold. */
export const namesIn = (one: Declaration): string[] => [...textsIn(one, SAID), signature(one)];

/** What is not the page's to translate: the texts of the ready books and garments, and what the sewing functions and their arguments, choices and headings are called. */
export function ownTexts(): Set<string> {
  const root = new URL("../../../templates/", import.meta.url);
  const books = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((path) =>
    path.endsWith(".json"),
  );
  const texts = books.flatMap((path) => textsIn(JSON.parse(readFileSync(new URL(path, root), "utf8"))));
  const functions = [...catalogue.values()].flatMap(namesIn);
  return new Set(
    [...texts, ...functions].map((text) => text.trim()).filter((text) => /[a-z]{2}/i.test(text)),
  );
}

const ESCAPED = /[\\^$.*+?()[\]{}|/]/g;

/** A text where no letter goes before or after it. */
const wholly = (text: string): RegExp =>
  new RegExp(`(?<!\\p{L})${text.replace(ESCAPED, "\\$&")}(?!\\p{L})`, "gu");

/** English words of the program in texts whose language is the pseudo-language: what is left when the maker's own texts are taken out. */
export function untranslated(texts: readonly string[], own: ReadonlySet<string>): string[] {
  const longest = [...own].sort((a, b) => b.length - a.length);
  return texts.filter((text) => {
    let left = text;
    if (!/[A-Za-z]{2}/.test(left)) return false;
    for (const one of longest) if (left.includes(one)) left = left.replaceAll(wholly(one), "§");
    return /(?<![\p{L}\p{N}_§])[A-Za-z]{2,}(?![\p{L}\p{N}_§(!])/u.test(
      left
        .replace(/[\u2066-\u2069]/g, "")
        .replace(/\b(?:in|cm|mm|yd|ft|sq|Ellwand|F\d+)\b|\b[A-Z_]{2,}\b/g, "§"),
    );
  });
}
