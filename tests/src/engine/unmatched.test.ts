import { expect, test } from "vitest";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

/** The widow's cloth list in A1:B4, a word in D1, and a formula in E1. */
function listBook(formula: string, word = ""): Book {
  const blank = blankBook("Withy Green", "in", "1/8");
  const rows = [
    ["linen", "3", "", word, formula],
    ["Wool", "5"],
    ["waist girth", "27"],
    ["linen", "4"],
  ];
  const columns = rows[0]!.map(() => ({ heading: "", kind: "any" as const, width: 100 }));
  return { ...blank, pages: [{ ...blank.pages[0]!, title: "List", columns, rows }], names: {} };
}

function seen(formula: string, word = "") {
  const engine = new Engine(listBook(formula, word), layDesk);
  const { value, problem } = engine.view({ page: 0, row: 0, column: 4 });
  const problems = checks(engine).map(({ is, sentence }) => [is, sentence]);
  engine.destroy();
  return { value, problem: problem && [problem.is, problem.sentence], problems };
}

test.each([
  ['=SUMIF(A1:A4;"waist girht";B1:B4)', 'SUMIF: no cell of A1:A4 says "waist girht"; the nearest is "waist girth"'],
  ['=COUNTIF(A1:A4;"linnen")', 'COUNTIF: no cell of A1:A4 says "linnen"; the nearest is "linen"'],
  ['=SUMIFS(B1:B4;A1:A4;"wol";B1:B4;">1")', 'SUMIFS: no cell of A1:A4 says "wol"; the nearest is "Wool"'],
  ['=COUNTIFS(A1:A4;"linen";A1:A4;"brocade")', 'COUNTIFS: no cell of A1:A4 says "brocade"'],
  ['=SUMIF(A:A;"li?en?";B:B)', 'SUMIF: no cell of A:A says "li?en?"; the nearest is "linen"'],
  ['=SUMIF(A1:A4;"<>linnen";B1:B4)', 'SUMIF: no cell of A1:A4 says "linnen"; the nearest is "linen"'],
  ['=2*SUMIF(A1:A4;"lin"&"nen";B1:B4)', 'SUMIF: no cell of A1:A4 says "linnen"; the nearest is "linen"'],
  ['=MAXIFS(B1:B4;A1:A4;"silk")', 'MAXIFS: no cell of A1:A4 says "silk"'],
] as const)("%s is answered, and its word that stands nowhere is among the problems", (formula, sentence) => {
  const { value, problem, problems } = seen(formula);
  expect(typeof value).toBe("number");
  expect(problem).toEqual(["unusual", sentence]);
  expect(problems).toEqual([["unusual", sentence]]);
}); // biome-ignore format: a table

test("the word of a criterion may stand in a cell", () => {
  expect(seen("=SUMIF(A1:A4;D1;B1:B4)", "linnen").problem?.[1]).toBe(
    'SUMIF: no cell of A1:A4 says "linnen"; the nearest is "linen"',
  );
  expect(seen("=SUMIF(A1:A4;D1;B1:B4)", "LINEN")).toMatchObject({ value: 7, problem: null });
});

test.each([
  '=SUMIF(A1:A4;"wool";B1:B4)',
  '=SUMIF(A1:A4;"li*";B1:B4)',
  '=SUMIF(B1:B4;">100";B1:B4)',
  '=SUMIF(B1:B4;"99";B1:B4)',
  '=COUNTIF(C1:C4;"linen")',
  '=IF(COUNTIF(A1:A4;"silk")=0;1;2)',
  '=IF(COUNTIF(A1:A4;"silk");SUMIF(A1:A4;"silk";B1:B4);0)',
  "=COUNTIF(A1:A4;5)",
])("%s has no problem", (formula) => {
  expect(seen(formula).problem).toBeNull();
});

test("a search without an answer names its word and the nearest", () => {
  const sentence = (formula: string, word = "") => seen(formula, word).problem;
  expect(sentence('=MATCH("linnen";A1:A4;0)')).toEqual([
    "error",
    'no cell of A1:A4 says "linnen"; the nearest is "linen"',
  ]);
  expect(sentence("=VLOOKUP(D1;A1:B4;2;FALSE())", "waist girht")).toEqual([
    "error",
    'no cell of the first column of A1:B4 says "waist girht"; the nearest is "waist girth"',
  ]);
  expect(sentence('=XLOOKUP("brocade";A1:A4;B1:B4)')).toEqual(["error", 'no cell of A1:A4 says "brocade"']);
  expect(sentence("=MATCH(99;B1:B4;0)")).toEqual(["error", "nothing was found to match"]);
});

test("the answer of a formula that stands in no cell says so too", () => {
  const engine = new Engine(listBook(""), layDesk);
  expect(engine.evaluate('=SUMIF(A1:A4;"linnen";B1:B4)')).toMatchObject({
    value: 0,
    unusual: 'SUMIF: no cell of A1:A4 says "linnen"; the nearest is "linen"',
  });
  engine.destroy();
});
