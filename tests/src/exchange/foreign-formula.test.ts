import { expect, test } from "vitest";
import {
  bookFormula,
  copiedForeign,
  endText,
  foreignParts,
  openFormula,
  type Places,
} from "../../../src/exchange/foreign-formula.ts";

const places: Places = {
  isFunction: (name) => ["SUM", "IF", "ROUND", "XLOOKUP", "VLOOKUP"].includes(name),
  reference: (sheet, from, to) => ({
    text: `${sheet === null ? "" : `'${sheet}'!`}${endText(from)}${to ? `:${endText(to)}` : ""}`,
  }),
  name: (name) => (name === "waist" ? { text: "waist" } : { why: `${name} is not known` }),
};
const ours = (formula: string, signs: "29500" | "26300" = "29500") => {
  const found = bookFormula(formula, signs, places);
  return "text" in found ? found.text : `! ${found.why}`;
};

// The grammars: ISO/IEC 29500-1, 18.17.2; OpenFormula, ISO/IEC 26300-4, 5.
test.each([
  ["SUM(A1,$B$2:C9)*2", "=SUM(A1;$B$2:C9)*2"],
  ["IF( waist >= 30 , \"a,b\"\"c\", -1.5E+3%)", '=IF(waist>=30;"a,b""c";-1.5e+3%)'],
  ["'Cloth list'!$A1+Sheet2!B:C", "='Cloth list'!$A1+'Sheet2'!B:C"],
  ["'It''s'!A1", "='It's'!A1"],
  ["SUM({1,2;3,4})", "=SUM({1;2|3;4})"],
  ["_xlfn.XLOOKUP(A1,B1:B9,3:4)", "=XLOOKUP(A1;B1:B9;3:4)"],
  ["TRUE&true", "=TRUE()&TRUE()"],
  ["#N/A", "=NA()"],
  ["A1 B2", "! it asks for the cells that two ranges share"],
  ["SUM((A1,B2))", "! it joins several ranges into one"],
  ["[1]Sheet1!A1", "! it names a column of a table, or another file"],
  ["'[book.xlsx]Sheet1'!A1", "! it names several sheets at once, or another file"],
  ["SUM(Sheet1:Sheet3!A1)", "! Sheet1 is not known"],
  ["SUM(Cloth[length])", "! it names a column of a table, or another file"],
  ["@A1:A9", "! it takes a single answer out of many"],
  ["A1#", "! it takes a single answer out of many"],
  ["A1+#REF!", "! it has lost a cell that it used"],
  ["GETPIVOTDATA(A1)", "! GETPIVOTDATA is not a function here"],
])("a formula of ISO/IEC 29500, %s, becomes %s", (formula, text) => expect(ours(formula)).toBe(text)); // biome-ignore format: a table

test.each([
  ["SUM([.A1];[.$B$2:.C9])*2", "=SUM(A1;$B$2:C9)*2"],
  ["[$'Cloth list'.$A1]+[Sheet2.B2:Sheet2.C3]", "='Cloth list'!$A1+'Sheet2'!B2:C3"],
  ["SUM({1;2|3;4})", "=SUM({1;2|3;4})"],
  ["SUM([.A1:.A1048576])", "=SUM(A1:A1048576)"],
  ["Sheet2![.A1]", "='Sheet2'!A1"],
  ["['file:///list.ods'#$Sheet1.A1]", "! it names a column of a table, or another file"],
  ["[Sheet1.A1:Sheet3.A1]", "! it names a column of a table, or another file"],
  ["COM.SUN.STAR.SHEET.ADDIN.X(1)", "! COM.SUN.STAR.SHEET.ADDIN.X is not a function here"],
])("a formula of ISO/IEC 26300, %s, becomes %s", (formula, text) => expect(ours(formula, "26300")).toBe(text)); // biome-ignore format: a table

test("a shared formula moves what is not fixed, and loses what falls off the sheet", () => {
  expect(copiedForeign('SUM(A$1:$B2)+List!C3&"A1"', 2, 1)).toBe('SUM(B$1:$B4)+List!D5&"A1"');
  expect(copiedForeign("A2", -2, 0)).toBe("#REF!");
});

test("a formula is written in OpenFormula and is the same read again", () => {
  for (const formula of ["SUM(A1,$B$2:C9)*2", "'Cloth list'!$A1+{1,2;3,4}", 'IF(waist>1,"a,b",TRUE())'])
    expect(ours(openFormula(formula).slice(4), "26300")).toBe(ours(formula));
});

test("the parts of any text are the text again", () => {
  for (const text of ["'", "[['", "=A1:B", 'SUM("a', "\u0000\u2028é½", "A1:B2:C3", "''!A1", "$A$1$", "{;}"])
    for (const signs of ["29500", "26300"] as const)
      expect(
        foreignParts(text, signs)
          .map((part) => part.text)
          .join(""),
      ).toBe(text);
});
