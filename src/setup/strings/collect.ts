/** What `npm run strings` does: writes the sentences of the code into the catalogues. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { po } from "gettext-parser";
import { allMessages, catalogueText, languages, TEMPLATE } from "./catalogues.ts";

/** Writes the template and every catalogue anew; `wanted` are tags of languages that are to have one. Gives what it did, in sentences. */
export function collect(root: string, wanted: readonly string[]): string[] {
  const messages = allMessages(root);
  writeFileSync(join(root, "src/languages", TEMPLATE), catalogueText(messages, null));
  const said = [`src/languages/${TEMPLATE}: ${messages.length} sentences`];
  for (const tag of new Set([...languages(root), ...wanted.map((one) => new Intl.Locale(one).toString())])) {
    const file = join(root, "src/languages", `${tag}.po`);
    const known = existsSync(file) ? po.parse(readFileSync(file)) : null;
    const text = catalogueText(
      messages,
      known ?? { charset: "utf-8", headers: headersOf(tag), translations: {} },
    );
    writeFileSync(file, text);
    const left = Object.values(po.parse(text).translations[""]!).filter(
      ({ msgid, msgstr }) => msgid && !msgstr[0],
    );
    said.push(`src/languages/${tag}.po: ${left.length} sentences to translate`);
  }
  return said;
}

const headersOf = (tag: string): Record<string, string> => ({
  "Project-Id-Version": "Ellwand",
  Language: tag,
  "MIME-Version": "1.0",
  "Content-Type": "text/plain; charset=utf-8",
  "Content-Transfer-Encoding": "8bit",
});
