/**
 * A language that nobody speaks, made of the catalogue: English in Hebrew letters, in which what is not
 * translated stands out, and which is read from right to left.
 */
import { readdirSync, readFileSync } from "node:fs";
import { type MessageFormatElement, parse, TYPE } from "@formatjs/icu-messageformat-parser";
import { printAST } from "@formatjs/icu-messageformat-parser/printer.js";
import { po } from "gettext-parser";
import type { Page } from "playwright-core";
import { catalogue } from "../../functions/catalogue.ts";
import { signature } from "../../functions/help.ts";
import { allMessages, catalogueText, languageOf } from "../../src/setup/strings/catalogues.ts";
import { moduleOf } from "../../src/setup/strings/plugin.ts";

/** The tag of a made-up language from right to left, by the custom of the Unicode CLDR. */
export const PSEUDO = "ar-XB";

const PLAIN = "abcdefghijklmnopqrstuvwxyz";
const HEBREW = "אבגדהוזחטיכלמנסעפצקרשתךםןף";

/** Words in Hebrew letters, a third longer, as many languages are beside English. */
export const madeUp = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[a-z]/g, (letter) => HEBREW[PLAIN.indexOf(letter)]!)
    .replace(/\p{L}{4,}/gu, (word) => word + word.slice(0, Math.floor(word.length / 3)));

const inMadeUp = (elements: readonly MessageFormatElement[]): MessageFormatElement[] =>
  elements.map((element) => {
    if (element.type === TYPE.literal) return { ...element, value: madeUp(element.value) };
    if (element.type !== TYPE.plural) return element;
    const options = Object.entries(element.options).map(([way, { value }]) => [
      way,
      { value: inMadeUp(value) },
    ]);
    return { ...element, options: Object.fromEntries(options) };
  });

/** The page as it would be served with this language beside English. */
export async function withPseudo(page: Page, address: string): Promise<void> {
  const root = new URL("../../", import.meta.url).pathname;
  const messages = allMessages(root);
  const written = po.parse(catalogueText(messages, null));
  for (const message of Object.values(written.translations[""]!))
    if (message.msgid !== "")
      message.msgstr = [printAST(inMadeUp(parse(message.msgid, { ignoreTag: true })))];
  const language = moduleOf(languageOf(PSEUDO, po.compile(written).toString(), messages));
  await page.route(address, async (route) => {
    const response = await route.fetch();
    const html = await response.text();
    await route.fulfill({ response, body: html.replace("<html ", `<html data-languages="${PSEUDO}" `) });
  });
  await page.route(`**/languages/${PSEUDO}.js`, (route) =>
    route.fulfill({ contentType: "text/javascript", body: language }),
  );
}

/** Every text in sight and every name and description that a screen reader says of it, without what is typed into fields. */
export const textsInSight = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const top = document.querySelector("dialog[open]") ?? document.body;
    const found = new Set<string>();
    const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const { parentElement: parent, textContent } = node;
      if (!parent || !textContent?.trim() || parent.closest("script, style, noscript, [inert]")) continue;
      if (parent.getClientRects().length > 0 || parent.closest("option")) found.add(textContent.trim());
    }
    for (const element of top.querySelectorAll("*"))
      for (const name of [
        "aria-label",
        "aria-description",
        "aria-valuetext",
        "title",
        "placeholder",
        "alt",
      ]) {
        const said = element.getAttribute(name)?.trim();
        if (said) found.add(said);
      }
    return [...found];
  });

/**
 * What stands the wrong way round in sight: figures with a fraction or a unit, formulas, and sentences in
 * English with their full stop on the wrong side. In a page from right to left each of these needs a
 * direction of its own, or "39 7/8" is read as "7/8 39".
 */
export const wrongWayRound = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const top = document.querySelector("dialog[open]") ?? document.body;
    const found = new Set<string>();
    const ORDERED = [
      /\d+ \d+\/\d+/g,
      /\d+\/\d+/g,
      /\d (?:in|cm|mm|yd|m|sq|s|%)(?![a-z])/g,
      /^=[\w(].*/g,
      /[a-z]{3,} [a-z]{2,}[.:;]$/g,
      /[−-]\d+/g,
    ];
    const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const { parentElement: parent, textContent } = node;
      if (!parent || !textContent || parent.closest("script, style, noscript, [inert], option")) continue;
      if (parent.getClientRects().length === 0) continue;
      const box = (at: number) => {
        const range = document.createRange();
        range.setStart(node, at);
        range.setEnd(node, at + 1);
        return range.getBoundingClientRect();
      };
      for (const pattern of ORDERED)
        for (const { 0: words, index } of textContent.matchAll(pattern)) {
          const [first, last] = [box(index), box(index + words.length - 1)];
          // A figure that is broken between two lines, or written upwards, has no first and last on one line.
          const oneLine = Math.abs(first.top - last.top) < first.height / 2;
          if (first.width > 0 && last.width > 0 && oneLine && first.left >= last.left)
            found.add(
              `${parent.tagName}.${parent.className}: ${textContent.trim().slice(0, 90)} (${words.slice(0, 30)})`,
            );
        }
    }
    return [...found];
  });

/** Every text in a plain value, at any depth. */
const textsIn = (value: unknown): string[] =>
  typeof value === "string"
    ? [value]
    : typeof value === "object" && value
      ? Object.entries(value).flatMap(([key, one]) => [key, ...textsIn(one)])
      : [];

/** What is not the page's to translate: the texts of the ready books and garments, and all that a sewing function says of itself. */
export function ownTexts(): Set<string> {
  const root = new URL("../../templates/", import.meta.url);
  const books = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((path) =>
    path.endsWith(".json"),
  );
  const texts = books.flatMap((path) => textsIn(JSON.parse(readFileSync(new URL(path, root), "utf8"))));
  const functions = [...catalogue.values()].flatMap((one) => [...textsIn(one), signature(one)]);
  return new Set(
    [...texts, ...functions].map((text) => text.trim()).filter((text) => /[a-z]{2}/i.test(text)),
  );
}

/** English words of the page in texts whose language is the pseudo-language: what is left when the maker's own texts are taken out. */
export function untranslated(texts: readonly string[], own: ReadonlySet<string>): string[] {
  const longest = [...own].sort((a, b) => b.length - a.length);
  return texts.filter((text) => {
    let left = text;
    if (!/[A-Za-z]{2}/.test(left)) return false;
    for (const one of longest) if (left.includes(one)) left = left.replaceAll(one, "§");
    return /(?<![\p{L}\p{N}_§])[A-Za-z]{2,}(?![\p{L}\p{N}_§(!])/u.test(
      left
        .replace(/[\u2066-\u2069]/g, "")
        .replace(/\b(?:in|cm|mm|yd|ft|sq|Ellwand|F\d+)\b|\b[A-Z_]{2,}\b/g, "§"),
    );
  });
}
