/** The declarations of the functions, parted for the page: together the parts say all of it. */
import { readFileSync } from "node:fs";
import { parseSync } from "vite";
import { expect, it } from "vitest";
import { catalogue } from "../../../functions/catalogue.ts";
import { withTexts } from "../../../src/app/function-texts.ts";
import { partOf } from "../../../src/setup/function-texts.ts";

/** The source of each property of the declaration in a file, by its name. */
function properties(code: string): Map<string, string> {
  const { program, errors } = parseSync("declaration.ts", code);
  expect(errors).toEqual([]);
  const found = new Map<string, string>();
  for (const statement of program.body) {
    if (statement.type !== "ExportNamedDeclaration") continue;
    if (statement.declaration?.type !== "VariableDeclaration") continue;
    const init = statement.declaration.declarations[0]?.init;
    if (init?.type !== "CallExpression" || init.arguments[0]?.type !== "ObjectExpression") continue;
    for (const one of init.arguments[0].properties)
      if (one.type === "Property" && one.key.type === "Identifier")
        found.set(one.key.name, code.slice(one.start, one.end));
  }
  return found;
}

it.each([...catalogue.values()].map(({ family, name }) => [family, name]))("%s/%s", (family, name) => {
  const file = new URL(`../../../functions/${family}/${name}.ts`, import.meta.url);
  const code = readFileSync(file, "utf8");
  const whole = properties(code);
  const texts = properties(partOf(code, "texts"));
  const rest = properties(partOf(code, "rest"));
  expect([...texts.keys()]).toEqual(
    [...whole.keys()].filter((one) => ["name", "source", "words", "alike", "examples"].includes(one)),
  );
  expect(texts.get("examples")).toBe(whole.get("examples"));
  expect([...rest.keys()].filter((one) => ["source", "words", "alike", "examples"].includes(one))).toEqual(
    [],
  );
  expect(new Map([...texts, ...rest])).toEqual(whole);
  const { examples, source, words } = withTexts(catalogue.get(name)!);
  expect(examples).toEqual(catalogue.get(name)!.examples);
  expect(source).toBe(catalogue.get(name)!.source);
  expect(words).toBe(catalogue.get(name)!.words);
});
