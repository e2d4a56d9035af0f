/** Serves the catalogues of src/languages/ beside the page, one file a language, and writes into the page which there are. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";
import type { Language } from "../../../functions/phrase.ts";
import { allMessages, languageOf, languages } from "./catalogues.ts";

/** A language as the module that the page loads. */
export const moduleOf = (language: Language): string => `export default ${JSON.stringify(language)};\n`;

export const catalogues = (root: string): Plugin => {
  const moduleFor = (tag: string) =>
    moduleOf(
      languageOf(tag, readFileSync(join(root, "src/languages", `${tag}.po`), "utf8"), allMessages(root)),
    );
  return {
    name: "catalogues",
    transformIndexHtml: (html) => {
      const tags = languages(root);
      return tags.length > 0 ? html.replace("<html ", `<html data-languages="${tags.join(" ")}" `) : html;
    },
    generateBundle() {
      for (const tag of languages(root))
        this.emitFile({ type: "asset", fileName: `languages/${tag}.js`, source: moduleFor(tag) });
    },
    configureServer({ middlewares }) {
      middlewares.use((request, response, next) => {
        const tag = /\/languages\/([\w-]+)\.js/.exec(request.url ?? "")?.[1];
        if (!tag || !languages(root).includes(tag)) return next();
        response.setHeader("Content-Type", "text/javascript");
        response.end(moduleFor(tag));
      });
    },
  };
};
