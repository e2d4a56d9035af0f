/**
 * A language that nobody speaks, made of the catalogue: English in Hebrew letters, in which what is not
 * translated stands out, and which is read from right to left.
 */
import type { Page } from "playwright-core";
import { inLetters, madeUpModules } from "../src/setup/made-up.ts";

/** The tag of a made-up language from right to left, by the custom of the Unicode CLDR. */
export const PSEUDO = "ar-XB";

/** Words in Hebrew letters. */
export const madeUp = inLetters("אבגדהוזחטיכלמנסעפצקרשתךםןף");

/** The page as it would be served with this language beside English. */
export async function withPseudo(page: Page, address: string): Promise<void> {
  const modules = madeUpModules(PSEUDO, madeUp);
  await page.route(address, async (route) => {
    const response = await route.fetch();
    const html = await response.text();
    await route.fulfill({ response, body: html.replace("<html ", `<html data-languages="${PSEUDO}" `) });
  });
  for (const [file, body] of [
    [`${PSEUDO}.js`, modules.start],
    [`${PSEUDO}.functions.js`, modules.functions],
  ] as const)
    await page.route(`**/languages/${file}`, (route) =>
      route.fulfill({ contentType: "text/javascript", body }),
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
