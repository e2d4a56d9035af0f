/**
 * Puts the first screen into the built page: the first page of the ready book with the figures that the
 * engine gives when the page is built, so that something can be read with the first response. Its styles
 * and the script that shows it at a first start stand in the page too, each allowed by its hash in the
 * page's policy. The page that is served for development has none of it.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Plugin, runnerImport } from "vite";

const ROOT = join(import.meta.dirname, "../..");

/** The book of a first start (src/app/files/ready.ts). */
const BOOK = join(ROOT, "templates/peplum-bodice.json");

/** What src/app/first-screen/render.ts gives. */
interface Rendered {
  readonly html: string;
  readonly css: string;
  readonly script: string;
}

/** The link to the styles of the first paint, as src/setup/start-chunks.ts names their file. */
const STYLES = /<link rel="stylesheet"([^>]*href="\.\/(assets\/first-[^"]*\.css)">)/;

/** The modules of the screen are run for what they write: their styles come with the page's. */
const withoutStyles: Plugin = {
  name: "without-styles",
  enforce: "pre",
  resolveId: (id) => (id.endsWith(".css") ? "\0no-styles" : null),
  load: (id) => (id === "\0no-styles" ? "" : null),
};

async function rendered(): Promise<Rendered> {
  const { module } = await runnerImport<{ render: (text: string) => Rendered }>(
    join(ROOT, "src/app/first-screen/render.ts"),
    { configFile: false, root: ROOT, logLevel: "warn", plugins: [withoutStyles] },
  );
  return module.render(readFileSync(BOOK, "utf8"));
}

const hashOf = (text: string): string => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

/** The page with what is rendered and the styles of the first paint inside it. */
export function withFirstScreen(page: string, styles: string, { html, css, script }: Rendered): string {
  const all = styles.trim() + css;
  const changes: readonly (readonly [from: string | RegExp, to: string])[] = [
    ["script-src 'self'", `script-src 'self' ${hashOf(script)}`],
    ["style-src 'self'", `style-src 'self' ${hashOf(all)}`],
    // What is loaded later finds that these styles are there; a disabled link loads nothing.
    [STYLES, '<link rel="stylesheet" disabled$1'],
    ["</title>", `</title>\n    <style>${all}</style>\n    <script>${script}</script>`],
    ['<div id="page">', `<div id="page">${html}`],
  ];
  return changes.reduce((now, [from, to]) => {
    if (now.split(from).length < 2)
      throw new Error(`index.html has changed: see src/setup/first-screen.ts (${from})`);
    return typeof from === "string" ? now.replace(from, () => to) : now.replace(from, to);
  }, page);
}

export const firstScreen: Plugin = {
  name: "first-screen",
  apply: "build",
  transformIndexHtml: {
    order: "post",
    async handler(page, { bundle }) {
      const file = STYLES.exec(page)?.[2] ?? "";
      const styles = bundle?.[file];
      if (styles?.type !== "asset") throw new Error("The page has no styles of the first paint");
      return withFirstScreen(page, String(styles.source), await rendered());
    },
  },
};
