/** Which rules of the grid's stylesheet the page is built with. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { cut, usedStyles } from "../../../src/setup/lean-libraries.ts";

it("rules of parts that the grid does not have are left out, and all others stay as they are", () => {
  const used = [
    ".handsontable td{color:red}",
    "@media (prefers-reduced-motion:reduce){.handsontable .htContextMenu{animation:none}}",
    ".handsontable:not(.htDropdownMenu):not(:is(.a,.b(c))) td{top:0}",
    ".ht-license-badge{top:0}",
  ];
  const unused = [
    ".htDropdownMenu td{top:0}",
    ":is(.htFiltersMenu,.x) a,.ht-pagination b{top:0}",
    ".a:not(.b) .htUIInput{top:0}",
  ];
  expect(usedStyles([unused[0], used[0], unused[1], used[1], used[2], unused[2], used[3]].join(""))).toBe(
    used.join(""),
  );
  expect(usedStyles(".htContextMenu td,.handsontable td{top:0}")).toBe(".handsontable td{top:0}");
});

it("the checks of the formulas' grammar are cut out of the parser, and a parser of another kind is refused", () => {
  const file = "node_modules/chevrotain/lib_esm/src/parse/parser/parser.js";
  const code = readFileSync(file, "utf8");
  expect(code).toContain("= validateGrammar(");
  expect(cut(file, code)).not.toContain("= validateGrammar(");
  expect(cut("src/main.ts", code)).toBeNull();
  expect(() => cut(file, "export class Parser {}")).toThrow(/has changed/);
});
