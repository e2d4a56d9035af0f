import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import { cellAddress } from "../../../src/book/address.ts";
import { alikeKey, cutFormula } from "../../../src/book/alike.ts";
import { writtenOut } from "../../../src/book/names.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { formulaOf } from "../../../src/engine/book-for-engine.ts";
import { engineConfig } from "../../../src/engine/config.ts";
import { toEngine } from "../../../src/engine/content.ts";
import { Guards, USUAL_LIMITS } from "../../../src/engine/guards.ts";
import type { Inside, Parsed } from "../../../src/engine/inside.ts";
import { register } from "../../../src/engine/register.ts";

register();

const key = (formula: string, row: number, column = 3): string | null => {
  const cut = cutFormula(formula);
  return cut && alikeKey(cut, row, column);
};

test("a formula that is filled down is alike, one that names the same cells further down is not", () => {
  expect(key("=B2+C$1", 1)).toBe(key("=B3+C$1", 2));
  expect(key("=B2+C$1", 1)).not.toBe(key("=B2+C$1", 2));
  expect(key("=B2+C$1", 1)).not.toBe(key("=B3+C$2", 2));
  expect(key("=SUM(B2:C2)", 1)).toBe(key("=SUM(B9:C9)", 8));
  expect(key("=Draft!B2*2", 1)).toBe(key("=Draft!B3*2", 2));
});

test.each([
  ["a comma, which may be a decimal mark", "=EASE(B2,5)"],
  ["a range that may turn round", "=SUM(A$9:A2)"],
  ["whole columns", "=SUM(B:C)+B2"],
  ["cells in braces", "={B2}"],
  ["row 0", "=B0+1"],
  ["OFFSET", "=OFFSET(B2;1;1)"],
  ["a sign that is not a plain one", "=B2−1"],
  ["a column beyond the last", "=ZZ1+1"],
])("%s: each such formula is read by itself", (_, formula) => {
  expect(cutFormula(formula)).toBeNull();
});

test("what looks like a cell within a text, a title, a name or a number is not taken for one", () => {
  expect(cutFormula(`=B2&" B3 "&'Page B4'!C5`)!.cells.map(({ text }) => text)).toEqual(["B2", "C5"]);
  expect(cutFormula("=B2+2E5+hip_B3+LOG10(4)")!.cells.map(({ text }) => text)).toEqual(["B2"]);
});

const book: Book = {
  ...blankBook("The goose girl's stays", "in", "1/8"),
  names: { waist: "Measure!B3", hips: "Measure!B2:B9" },
};

const part = fc.oneof(
  fc.tuple(fc.boolean(), fc.nat(9), fc.boolean(), fc.nat(30)).map(([c, column, r, row]) => {
    const [, letters, figures] = /([A-Z]+)(\d+)/.exec(cellAddress(row, column))!;
    return `${c ? "$" : ""}${letters}${r ? "$" : ""}${figures}`;
  }),
  fc.constantFrom(
    "+", "-", "*", ";", ":", "(", ")", " ", "SUM(", "IF(", "EASE(", "OFFSET(", "Draft!", "'Fit'!", "waist", "hips", "2", "1/2", "3 1/2",
    "2.5", ",", '"B3"', '"', "'", "in", "E5", "GA10001", "$GA$10001", "LOG10(", "{", "}", "<>", "&", "%", "A:A", "5:6", "B0", "#REF!", "×", "½",
  ), // biome-ignore format: a list
);
const formula = fc.oneof(
  fc.array(part, { minLength: 1, maxLength: 9 }).map((parts) => `=${parts.join("")}`),
  fc.array(part, { minLength: 3, maxLength: 3 }).map(([a, b, c]) => `=SUM(${a}:${b})+${c}*waist`),
);

/** The formula as it is when it is filled from one cell to another. */
const filled = (text: string, down: number, across: number): string =>
  text.replace(/(?<![A-Za-z0-9_.$])(\$?)([A-J])(\$?)([1-9]\d?)(?![\w.(!$])/g, (_, c, letters, r, figures) => {
    const column = letters.charCodeAt(0) - 65 + (c ? 0 : across);
    const row = Number(figures) - 1 + (r ? 0 : down);
    const [, l, f] = /([A-Z]+)(\d+)/.exec(cellAddress(row, column))!;
    return `${c}${l}${r}${f}`;
  });

test("formulas that are written out by pattern are what they are when each is written out by itself", () => {
  let shared = 0;
  fc.assert(
    fc.property(formula, fc.nat(5), fc.nat(3), (text, down, across) => {
      for (const one of [text, filled(text, down, across)]) {
        if (cutFormula(one)) shared += 1;
        expect(formulaOf(book, one, 0)).toBe(toEngine(writtenOut(book, one, 0), book.unit, book.decimal));
      }
    }),
    { numRuns: 1500 },
  );
  expect(shared).toBeGreaterThan(100);
});

test("a formula parsed from one that is alike is what HyperFormula makes of it by itself", () => {
  type Parser = { parse(text: string, at: { sheet: number; row: number; col: number }): Parsed };
  let plain: Parser["parse"] | undefined;
  let parser: Parser | undefined;
  const inside = (one: Inside) => {
    parser = one.dependencyGraph.lazilyTransformingAstService.parser;
    plain = parser.parse.bind(parser);
    new Guards(USUAL_LIMITS).set(one);
  };
  const sheets = { Measure: [[1]], Draft: [[1]], Fit: [[1]] };
  const hf = HyperFormula.buildFromSheets(sheets, engineConfig({ unit: "in", inside }));
  hf.getCellValue({ sheet: 0, row: 0, col: 0 });
  let alike = 0;
  const seen = new Map<string, Parsed>();
  fc.assert(
    fc.property(formula, fc.nat(5), fc.nat(3), (text, down, across) => {
      for (const [one, row, col] of [[text, 4, 4], [filled(text, down, across), 4 + down, 4 + across]] as const) {
        const at = { sheet: 0, row, col };
        let own: Parsed;
        try {
          own = plain!(one, at);
        } catch {
          // HyperFormula can't read it at all.
          continue;
        }
        const given = parser!.parse(one, at);
        expect(given).toEqual(own);
        const known = key(one, row, col);
        if (known !== null && seen.get(known) === given && row + col > 8) alike += 1;
        if (known !== null) seen.set(known, given);
      }
    }),
    { numRuns: 1500 },
  ); // biome-ignore format: pairs
  expect(alike).toBeGreaterThan(30);
  hf.destroy();
});
