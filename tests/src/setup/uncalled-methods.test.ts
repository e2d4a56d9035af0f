/** Which methods of HyperFormula and of the grid's library the page is built with. */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { build, type Rolldown } from "vite";
import { expect, it } from "vitest";
import { cutLibraries, leanLibraries } from "../../../src/setup/lean-libraries.ts";
import { parsed } from "../../../src/setup/program-parts.ts";
import { sharedParser } from "../../../src/setup/shared-parser.ts";
import { namesInUse, uncalledMethods, withoutUncalled } from "../../../src/setup/uncalled-methods.ts";
import { often } from "../../often.ts";

const library = `
class Book {
  constructor() { this.begin(); }
  begin() {}
  asked() { this.behindAsked(); }
  behindAsked() {}
  unasked() { this.unasked(); this.behindUnasked(); }
  behindUnasked() {}
  byText() {}
  apart() {}
  toString() { return "a book"; }
}
function Old(twice) {
  this.own = () => this.behindOwn();
  this.behindOwn = function () { return twice; };
  if (twice) this.unowned = function () {};
  this.kept = twice;
}
Old.prototype.asked = function () { return 1; };
Old.prototype.unasked = function () { return 2; };
`;

it("a method that nothing names is left out, with what only such methods name", () => {
  const caller =
    'book.asked(); book["byText"](); const { apart } = book; old.own(); const said = "unasked as a word";';
  const inUse = namesInUse([library, caller].map((code) => parsed(code)));
  const kept = withoutUncalled(library, parsed(library), inUse);
  const methods = new Function(`${kept}; return [Book, Old].map((one) => Object.keys(
    Object.getOwnPropertyDescriptors(one.prototype)).filter((name) => name !== "constructor"))`)();
  expect(methods).toEqual([["begin", "asked", "behindAsked", "byText", "apart", "toString"], ["asked"]]);
  expect(Object.keys(new Function(`${kept}; return new Old(2);`)())).toEqual(["own", "behindOwn", "kept"]);
});

/** HyperFormula as the page has it: without what its methods, its parser and its options leave unused. */
async function engineOfThePage(): Promise<typeof HyperFormula> {
  const { output } = (await build({
    configFile: false,
    logLevel: "error",
    plugins: [leanLibraries, uncalledMethods, cutLibraries, sharedParser],
    ssr: { noExternal: true },
    build: {
      ssr: "node_modules/hyperformula/es/index.mjs",
      write: false,
      minify: false,
      rolldownOptions: { output: { codeSplitting: false } },
    },
  })) as Rolldown.RolldownOutput;
  const file = join("node_modules/.cache/ellwand", `engine-of-the-page-${process.pid}.mjs`);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, output[0].code);
  try {
    return (await import(/* @vite-ignore */ pathToFileURL(file).href)).HyperFormula;
  } finally {
    rmSync(file);
  }
}

it("the engine as the page has it answers formulas, right and wrong ones, as the whole library does", async () => {
  const engines = [HyperFormula, await engineOfThePage()].map((one) =>
    one.buildFromSheets(
      {
        One: [
          [1, 2.5, "a"],
          ["=A1+1", "=SUM(A1:B2)"],
          [true, "=1/0", null],
        ],
        "Two b": [[5, "=One!A2*2"]],
      },
      { licenseKey: "gpl-v3", functionArgSeparator: ";" },
    ),
  );
  const answers = (formula: string) =>
    engines.map((engine) => {
      try {
        engine.setCellContents({ sheet: 1, row: 3, col: 3 }, formula);
        const found = [
          engine.calculateFormula(formula, 0),
          engine.getCellValue({ sheet: 1, row: 3, col: 3 }),
        ];
        return JSON.stringify(found, (_, value) => (typeof value === "number" ? String(value) : value));
      } catch (fault) {
        return String(fault);
      }
    });
  const sign = fc.constantFrom(
    ...[
      "1",
      "2.5",
      '"t"',
      '"',
      "A1",
      "$B$2",
      "A1:B2",
      "A:A",
      "'Two b'!A1",
      "Nope!A1",
      "+",
      "-",
      "*",
      "/",
      "^",
    ],
    ...["&", "=", "<>", "%", "(", ")", "{", "}", ";", ",", " ", "!", ":", "SUM(", "IF(", "ROUND(", "FOO("],
    ...["OFFSET(A1;1;1)", "VLOOKUP(", "#REF!", "TRUE()", "name"],
  );
  const value = fc.constantFrom("1", "A1", "B2", "A1:B2", '"t"', "'Two b'!B1", "{1;2}", "C3", "TRUE()");
  const written = fc.oneof(
    fc.array(sign, { minLength: 1, maxLength: 8 }).map((signs) => `=${signs.join("")}`),
    fc
      .tuple(fc.constantFrom("SUM", "IF", "ROUND", "MATCH", "COUNTIF", "IFERROR", "MAX"), fc.array(value))
      .map(([name, given]) => `=${name}(${given.join(";")})*2`),
  );
  let answered = 0;
  fc.assert(
    fc.property(written, (formula) => {
      const [whole, less] = answers(formula);
      if (!/Error/.test(whole!)) answered += 1;
      expect(less).toBe(whole);
    }),
    { numRuns: often(1500) },
  );
  expect(answered).toBeGreaterThan(often(200));
});
