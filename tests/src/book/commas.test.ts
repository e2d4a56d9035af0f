import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { unclearComma } from "../../../src/book/commas.ts";
import { tokens } from "../../../src/book/formula.ts";

const figures = (formula: string) =>
  tokens(formula).flatMap(({ kind, text }) => (kind === "number" || kind === "tape" ? [text] : []));

describe("a comma between figures", () => {
  test.each([
    ["=GIRTH_OVER(90; 0,3)", ["90", "0,3"]],
    ["=28,5*2", ["28,5", "2"]],
    ["=(1,5+2)*3", ["1,5", "2", "3"]],
    ["=CM(2,5)", ["2,5"]],
    ["=F(1,2)", ["1", "2"]],
    ["=F(1,5 m)", ["1", "5 m"]],
    ["=F(a; 1,5 m)", ["1,5 m"]],
    ["=F(a; 1 yd 9,5 in)", ["1 yd 9,5 in"]],
    ["=F(A1,2)", ["2"]],
    ["=F(36 1/2,39)", ["36 1/2", "39"]],
    ["=F(\"1,2\"; '1,2'!A1; 1)", ["1"]],
  ])("in %s stands in the figures %j", (formula, expected) => {
    expect(figures(formula)).toEqual(expected);
    expect(unclearComma(formula)).toBeNull();
  });

  test.each([
    ["=IF(A1>2; MAX(1,2); 3)", "1,2", "1.2", "1 and 2"],
    ["=MAX(90, 0,3)", "0,3", "0.3", "0 and 3"],
    ["=MAX(90; ,3)", ",3", "0.3", "(blank) and 3"],
    ["=SUM({1,2|3,4}; 5)", "1,2", "1.2", "1 and 2"],
  ])("in %s has two readings, and the sentence names both", (formula, run, figure, two) => {
    expect(unclearComma(formula)).toBe(
      `${run} has two readings in this formula: the number ${figure}, or two arguments ${two}; type ${figure}, or separate the arguments with ;`,
    );
  });

  test("never ends an argument without a word in a book that shows decimal commas", () => {
    expect(unclearComma("=MAX(90,5)", "point")).toBeNull();
    expect(unclearComma("=MAX(90,5)", "comma")).toContain("90,5 has two readings");
    expect(unclearComma("=MAX(90, 5)", "comma")).toBeNull();
    expect(unclearComma("=MAX(90; 5,5)", "comma")).toBeNull();
  });

  test("in a call parted by ; is the same as a point, whatever the figures", () => {
    const figure = fc.tuple(fc.nat(999), fc.nat(999)).map(([whole, rest]) => [whole, rest] as const);
    fc.assert(
      fc.property(fc.array(figure, { minLength: 2, maxLength: 5 }), (list) => {
        const formula = (mark: string) =>
          `=MAX(${list.map(([whole, rest]) => `${whole}${mark}${rest}`).join("; ")})`;
        expect(figures(formula(",")).map((text) => text.replace(",", "."))).toEqual(figures(formula(".")));
      }),
      { seed: 20_260_601, numRuns: 200 },
    );
  });
});
