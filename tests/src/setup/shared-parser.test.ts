/** All engines share one parser of formulas (src/setup/shared-parser.ts). */
import { FunctionPlugin, HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import { withSharedParser } from "../../../src/setup/shared-parser.ts";

interface Inside {
  readonly _parser: { readonly formulaParser: object };
}
const parserOf = (hf: HyperFormula) => (hf as unknown as Inside)._parser.formulaParser;

const options = { licenseKey: "gpl-v3", functionArgSeparator: ";", arrayColumnSeparator: ";" } as const;
const engine = (title: string, figure: number, more: object = {}) =>
  HyperFormula.buildFromSheets(
    { [title]: [[figure, `=${title}!A1*2`]] },
    { ...options, arrayRowSeparator: "|", ...more },
  );

test("engines with the same signs share a parser, and each reads formulas by its own pages", () => {
  const [skirt, cape] = [engine("Skirt", 3), engine("Cape", 4)];
  expect(parserOf(skirt)).toBe(parserOf(cape));
  for (const [hf, own, other, twice] of [
    [skirt, "Skirt", "Cape", 6],
    [cape, "Cape", "Skirt", 8],
    [skirt, "Skirt", "Cape", 6],
  ] as const) {
    expect(hf.calculateFormula(`=${own}!B1`, 0)).toBe(twice);
    expect(hf.calculateFormula(`=${other}!B1`, 0)).toMatchObject({ type: "REF" });
  }
});

test("engines with other signs or other limits have a parser of their own", () => {
  const usual = parserOf(engine("Skirt", 3));
  for (const more of [
    { functionArgSeparator: "," },
    { decimalSeparator: ",", thousandSeparator: "." },
    { maxRows: 9 },
  ])
    expect(parserOf(engine("Skirt", 3, more))).not.toBe(usual);
});

class Late extends FunctionPlugin {
  static override implementedFunctions = { COMES_LATE: { method: "answer", parameters: [] } };
  answer(): number {
    return 7;
  }
}

test("a function that is registered later is known to the engines that are made after it", () => {
  const before = engine("Skirt", 3);
  HyperFormula.registerFunctionPlugin(Late, { enGB: { COMES_LATE: "COMES_LATE" } });
  try {
    expect(engine("Skirt", 3).calculateFormula("=COMES_LATE()", 0)).toBe(7);
    expect(before.calculateFormula("=COMES_LATE()", 0)).toMatchObject({ type: "NAME" });
  } finally {
    HyperFormula.unregisterFunctionPlugin(Late);
  }
});

test("the build fails when the library's parser is no longer as it was", () => {
  expect(() => withSharedParser("export class ParserWithCaching {}")).toThrow(/has changed/);
});
