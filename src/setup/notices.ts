/**
 * The licence notices of everything that is bundled into the page and its workers, or into the command
 * line, as one plain text file beside it.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Plugin } from "vite";

const RULE = "=".repeat(78);

interface Described {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name: string };
  readonly homepage?: string;
}

/** The folder of the package that a bundled module belongs to; null for our own and the bundler's modules. */
function packageOf(id: string): string | null {
  const found = /^(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(id.replace(/^\0/, "").replaceAll("\\", "/"));
  return found && existsSync(join(found[1]!, "package.json")) ? found[1]! : null;
}

/** A package's name, version and licence, then the text of its licence and notice files. */
function noticeOf(folder: string): string {
  const about = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Described;
  const { name, version, license = "licence not stated", author, homepage } = about;
  const by = typeof author === "string" ? author : author?.name;
  const files = readdirSync(folder).filter((file) => /^(?:licen[cs]e|copying|notice)/i.test(file));
  const texts = files.sort().map((file) => readFileSync(join(folder, file), "utf8").trim());
  const head = [`${name} ${version} (${license})`, by && `by ${by}`, homepage].filter(Boolean).join("\n");
  return [head, ...texts].join("\n\n");
}

const gpl = (): string => readFileSync(new URL("./gpl-3.0.txt", import.meta.url), "utf8").trim();

/** Writes the notices of the packages in a build into a file of that name. */
export const notices = (root: string, fileName: string): Plugin => ({
  name: "notices",
  generateBundle(_, bundle) {
    const packages = new Set<string>();
    const add = (id: string) => {
      const folder = packageOf(id);
      if (folder) packages.add(folder);
    };
    for (const chunk of Object.values(bundle)) if (chunk.type === "chunk") chunk.moduleIds.forEach(add);
    // The grid's stylesheet is no module of a chunk.
    for (const id of this.getModuleIds()) if (id.endsWith(".css")) add(id);
    const head =
      "Ellwand: licence notices\n\nWhat stands beside this file is made of Ellwand and of the packages below.";
    const texts = [noticeOf(root), ...[...packages].sort().map(noticeOf)];
    // Its terms ask that everyone who gets the program gets the licence too; packages only name it.
    if (texts.some((text) => /\(GPL-3\.0/.test(text))) texts.push(gpl());
    this.emitFile({
      type: "asset",
      fileName,
      source: `${[head, ...texts].join(`\n\n${RULE}\n\n`)}\n`,
    });
  },
});
