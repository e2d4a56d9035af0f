/** Serves the catalogues of src/languages/ beside the page and the command line, and writes into the page which there are. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";
import type { Language } from "../../../functions/phrase.ts";
import { allMessages, languageOf, languages } from "./catalogues.ts";
import type { Message } from "./messages.ts";

/** A language as the two modules that the page loads: what it says from its start, and what the sewing functions say of themselves. */
export function modulesOf(
  tag: string,
  text: string,
  messages: readonly Message[],
): { start: string; functions: string } {
  const of = (some: readonly Message[]): Language => languageOf(tag, text, some);
  const module = (value: unknown) => `export default ${JSON.stringify(value)};\n`;
  return {
    start: module(of(messages.filter((one) => !one.late && !isOfCommand(one)))),
    functions: module(of(messages.filter(({ late }) => late)).phrases),
  };
}

/** Whether only the command line says it. */
const isOfCommand = ({ files }: Message): boolean => files.every((file) => file.startsWith("src/command/"));

/** A language as the one file that the command line loads. */
export const wholeLanguage = (tag: string, text: string, messages: readonly Message[]): string =>
  JSON.stringify(languageOf(tag, text, messages));

/** The languages beside the command line: languages/de.json. */
export const commandCatalogues = (root: string): Plugin => ({
  name: "command-catalogues",
  generateBundle() {
    const messages = allMessages(root);
    for (const tag of languages(root)) {
      const source = wholeLanguage(tag, catalogueOf(root, tag), messages);
      this.emitFile({ type: "asset", fileName: `languages/${tag}.json`, source });
    }
  },
});

const catalogueOf = (root: string, tag: string): string =>
  readFileSync(join(root, "src/languages", `${tag}.po`), "utf8");

export const catalogues = (root: string): Plugin => {
  const modulesFor = (tag: string) => modulesOf(tag, catalogueOf(root, tag), allMessages(root));
  return {
    name: "catalogues",
    transformIndexHtml: (html) => {
      const tags = languages(root);
      return tags.length > 0 ? html.replace("<html ", `<html data-languages="${tags.join(" ")}" `) : html;
    },
    generateBundle() {
      for (const tag of languages(root)) {
        const { start, functions } = modulesFor(tag);
        this.emitFile({ type: "asset", fileName: `languages/${tag}.js`, source: start });
        this.emitFile({ type: "asset", fileName: `languages/${tag}.functions.js`, source: functions });
      }
    },
    configureServer({ middlewares }) {
      middlewares.use((request, response, next) => {
        const [, tag, late] = /\/languages\/([\w-]+)(\.functions)?\.js/.exec(request.url ?? "") ?? [];
        if (!tag || !languages(root).includes(tag)) return next();
        response.setHeader("Content-Type", "text/javascript");
        response.end(modulesFor(tag)[late ? "functions" : "start"]);
      });
    },
  };
};
