/**
 * Divides the declarations of the sewing functions for the page: what a function calculates and draws with is
 * loaded at the start, and the texts that only the help and the working show are loaded with the help. In the source a
 * declaration is one object. Without this plugin each part is the whole declaration.
 */
import { type Plugin, parseSync } from "vite";

/** What only the help, the source under a working and the tests of the catalogue read. */
const TEXTS: ReadonlySet<string> = new Set(["source", "words", "alike", "examples"]);

/** With this at its end, a declaration's path gives the texts; src/app/function-texts.ts asks for it. */
const QUERY = "?texts";

/** The code with only the texts of its declaration, or with all but these. The name stands in both. */
export function partOf(code: string, part: "texts" | "rest"): string {
  const { program } = parseSync("declaration.ts", code);
  const left: (readonly [from: number, to: number])[] = [];
  for (const statement of program.body) {
    if (statement.type !== "ExportNamedDeclaration") continue;
    if (statement.declaration?.type !== "VariableDeclaration") continue;
    for (const { init } of statement.declaration.declarations) {
      if (init?.type !== "CallExpression" || init.callee.type !== "Identifier") continue;
      const [declared] = init.arguments;
      if (init.callee.name !== "define" || declared?.type !== "ObjectExpression") continue;
      for (const property of declared.properties) {
        const name =
          property.type === "Property" && property.key.type === "Identifier" ? property.key.name : "";
        if (name !== "name" && TEXTS.has(name) !== (part === "texts")) {
          const { end } = property;
          left.push([property.start, end + (/^\s*,/.exec(code.slice(end))?.[0].length ?? 0)]);
        }
      }
    }
  }
  return left.reduceRight((text, [from, to]) => text.slice(0, from) + text.slice(to), code);
}

export const functionTexts: Plugin = {
  name: "function-texts",
  apply: "build",
  enforce: "pre",
  transform(code, id) {
    const found = /\/functions\/[a-z]+\/[A-Z][A-Z0-9_]*\.ts(\?.*)?$/.exec(id);
    return found ? { code: partOf(code, found[1] === QUERY ? "texts" : "rest"), map: null } : null;
  },
};
