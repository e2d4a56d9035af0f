import fc from "fast-check";
import { HyperFormula } from "hyperformula";
import { describe, expect, test } from "vitest";
import type { Decimal } from "../../../functions/decimal.ts";
import { MOST_NESTED } from "../../../src/book/formula.ts";
import type { ColumnKind } from "../../../src/book/shape.ts";
import { engineConfig } from "../../../src/engine/config.ts";
import { forEngine, toEngine, understand } from "../../../src/engine/content.ts";
import { register } from "../../../src/engine/register.ts";
import { often } from "../../often.ts";

register();

// 1 in = 2.54 cm, 1 yd = 36 in, 1 ft = 12 in, all exact: NIST SP 811 (2008), appendix B.8.
describe("lengths as people write them", () => {
  test.each([
    ["16 1/2", 16.5],
    ["16½", 16.5],
    ["16 ½", 16.5],
    ["16-1/2", 16.5],
    ["16 1/2 in", 16.5],
    ["16 1/2in", 16.5],
    ['16 1/2"', 16.5],
    ["16 1/2”", 16.5],
    ["16 1⁄2", 16.5],
    ["3/8", 0.375],
    ["⅜", 0.375],
    ["+3/8", 0.375],
    ["-3/8", -0.375],
    ["−3/8", -0.375],
    ["42 cm", 42 / 2.54],
    ["42cm", 42 / 2.54],
    ["42 CM", 42 / 2.54],
    ["420 mm", 42 / 2.54],
    ["1 m", 100 / 2.54],
    ["1 yd", 36],
    ["1 yd 9 in", 45],
    ["5' 3\"", 63],
    ["5’ 3”", 63],
    ["5 ft 3 1/2 in", 63.5],
    [".5 in", 0.5],
    [",5 in", 0.5],
    ["1,5 m", 150 / 2.54],
    ["2,54 cm", 1],
    ["27 in.", 27],
    ["42 centimetres", 42 / 2.54],
    ["27 1/2''", 27.5],
    ["27 1/2’’", 27.5],
    ["5 feet 3 inches", 63],
    ["2 yds.", 72],
  ])("%s is %d in in an inch book, and as long in a centimetre book", (typed, inches) => {
    const content = understand(typed, "any", "in");
    expect(content).toMatchObject({ is: "length" });
    expect((content as { value: number }).value).toBeCloseTo(inches, 12);
    const metric = understand(typed, "any", "cm") as { value: number; sure: boolean };
    expect(metric.value).toBeCloseTo(metric.sure ? inches * 2.54 : inches, 12);
  });

  test("a bare figure is a length where the column is of lengths, and a number elsewhere", () => {
    expect(understand("16.5", "length", "in")).toEqual({ is: "length", value: 16.5, sure: true });
    expect(understand("16.5", "any", "in")).toEqual({ is: "number", value: 16.5 });
  });

  test("a fraction alone is a length only as far as nothing else says so", () => {
    expect(understand("1/2", "any", "in")).toEqual({ is: "length", value: 0.5, sure: false });
    expect(understand("1/2", "length", "in")).toEqual({ is: "length", value: 0.5, sure: true });
    for (const kind of ["number", "money", "date"] as const)
      expect(understand("1/2", kind, "in")).toEqual({ is: "number", value: 0.5 });
  });
});

describe("everything else that is typed", () => {
  test.each<[string, ColumnKind, unknown]>([
    ["", "any", { is: "blank" }],
    [" \u00a0\t", "length", { is: "blank" }],
    ["27", "any", { is: "number", value: 27 }],
    ["-3", "any", { is: "number", value: -3 }],
    ["−3", "any", { is: "number", value: -3 }],
    ["+3.", "any", { is: "number", value: 3 }],
    [".5", "any", { is: "number", value: 0.5 }],
    ["1e3", "any", { is: "number", value: 1000 }],
    ["1e999", "any", { is: "text", value: "1e999" }],
    ["9".repeat(400), "length", { is: "text", value: "9".repeat(400) }],
    ["50%", "any", { is: "share", value: 0.5 }],
    ["12.5 %", "any", { is: "share", value: 0.125 }],
    ["−5%", "any", { is: "share", value: -0.05 }],
    [".5%", "any", { is: "share", value: 0.005 }],
    ["TRUE", "any", { is: "flag", value: true }],
    ["false", "any", { is: "flag", value: false }],
    ["2026-05-04", "any", { is: "date", value: "2026-05-04" }],
    ["2024-02-29", "any", { is: "date", value: "2024-02-29" }],
    ["16 1/0", "text", { is: "text", value: "16 1/0" }],
    ["4 2 in", "any", { is: "text", value: "4 2 in" }],
    ["555 1234", "any", { is: "text", value: "555 1234" }],
    ["10-12", "any", { is: "text", value: "10-12" }],
    ["5 hooks", "any", { is: "text", value: "5 hooks" }],
    ["28,5", "any", { is: "number", value: 28.5 }],
    ["70,5", "length", { is: "length", value: 70.5, sure: true }],
    ["-28,5", "number", { is: "number", value: -28.5 }],
    ["12,50", "money", { is: "number", value: 12.5 }],
    ["12,5 %", "any", { is: "share", value: 0.125 }],
    ["1,234.5", "any", { is: "number", value: 1234.5 }],
    ["1.234,5", "any", { is: "number", value: 1234.5 }],
    ["28,5", "text", { is: "text", value: "28,5" }],
    ["28,5, 30", "any", { is: "text", value: "28,5, 30" }],
    ["about 1,200", "any", { is: "text", value: "about 1,200" }],
    ["=", "any", { is: "text", value: "=" }],
    ["'=A1", "any", { is: "text", value: "'=A1" }],
    ["<script>", "any", { is: "text", value: "<script>" }],
    ["27", "text", { is: "text", value: "27" }],
    ["16 1/2 in", "text", { is: "text", value: "16 1/2 in" }],
    ["2026-05-04", "text", { is: "text", value: "2026-05-04" }],
    ["TRUE", "text", { is: "text", value: "TRUE" }],
    ["  waist ", "any", { is: "text", value: "  waist " }],
    ["=1+1", "text", { is: "formula", value: "=1+1" }],
    [" =1+1", "any", { is: "formula", value: "=1+1" }],
  ])("%j in a column of kind %s", (typed, kind, content) => {
    expect(understand(typed, kind, "in")).toEqual(content);
  });
});

test("a day is read where its figures settle the order; else the two readings are asked about, and a day of no calendar is refused", () => {
  const date = (value: string) => ({ is: "date", value });
  const asked = (typed: string) => {
    const content = understand(typed, "any", "in");
    return content.is === "text" ? content.unclear : content;
  };
  for (const typed of [
    "25.12.2026",
    "25/12/2026",
    "12/25/2026",
    "25-12-2026",
    "2026/12/25",
    "2026.12.25",
    "25. 12. 2026",
  ])
    expect(understand(typed, "any", "in", "comma")).toEqual(date("2026-12-25"));
  expect(understand("5.5.2026", "date", "cm")).toEqual(date("2026-05-05"));
  expect(understand("2026-5-4", "any", "in")).toEqual(date("2026-05-04"));
  expect(understand("2026-13-01", "text", "in")).toEqual({ is: "text", value: "2026-13-01" });
  for (const typed of ["4.5.2026", "04/05/2026", "4-5-2026"]) {
    // Whoever writes decimal commas writes the day first.
    expect(understand(typed, "any", "cm", "comma")).toEqual(date("2026-05-04"));
    expect(asked(typed)).toBe(
      `${typed} has two readings: 2026-05-04, with the day first, or 2026-04-05, with the month first; type the one that is meant`,
    );
  }
  for (const typed of ["2026-02-29", "2026-13-01", "2026-04-31", "1899-12-31", "31.2.2026", "14/13/2026"])
    expect(asked(typed)).toContain(`${typed} is not a valid date after 1899`);
  // What merely has strokes or points in it stays what it is.
  for (const typed of ["10-12", "1.2.3", "4/5/26"]) expect(asked(typed)).toBeUndefined();
});

test("a column of dates reads the names of months in English, German, French and Spanish, and asks for the century", () => {
  const read = (typed: string) => understand(typed, "date", "cm", "comma");
  for (const typed of [
    "27. November 2026",
    "27 November 2026",
    "27. Nov. 2026",
    "27 novembre 2026",
    "27 nov. 2026",
    "27 de noviembre de 2026",
    "November 27, 2026",
  ])
    expect(read(typed), typed).toEqual({ is: "date", value: "2026-11-27" });
  for (const typed of ["1er août 2026", "1 aout 2026", "1. August 2026", "1 ago 2026", "August 1st, 2026"])
    expect(read(typed), typed).toEqual({ is: "date", value: "2026-08-01" });
  for (const typed of ["3. März 2026", "3 mars 2026", "3 de marzo de 2026", "3 Mar 2026"])
    expect(read(typed), typed).toEqual({ is: "date", value: "2026-03-03" });
  for (const typed of ["30. Februar 2026", "31 juin 2026"])
    expect(read(typed), typed).toMatchObject({ unclear: expect.stringContaining("is not a valid date") });
  expect(read("27.11.26")).toEqual({
    is: "text",
    value: "27.11.26",
    unclear: "the year of 27.11.26 has two figures; type all four, such as 27.11.2026",
  });
  expect(read("27 Fittings 2026")).toMatchObject({
    unclear: expect.stringContaining("can't be read as a day"),
  });
  for (const typed of ["in November 2026", "after 2026", "2nd fitting"])
    expect(read(typed), typed).toEqual({ is: "text", value: typed });
  // Elsewhere they stay what they are: a note, a title.
  expect(understand("27. November 2026", "any", "cm", "comma")).toEqual({
    is: "text",
    value: "27. November 2026",
  });
});

test("a figure with two readings is no figure, and says which two", () => {
  const unclear = (typed: string, decimal: Decimal) => {
    const content = understand(typed, "any", "cm", decimal);
    return content.is === "text" ? content.unclear : content;
  };
  expect(unclear("1,200", "point")).toBe(
    "1,200 has two readings: 1.200 with the comma as its decimal mark, or 1200; type the one that is meant",
  );
  expect(unclear("1,200 mm", "point")).toContain("two readings");
  expect(unclear("1.200", "comma")).toBe(
    "1.200 has two readings: 1,200 with the point as its decimal mark, or 1200; type the one that is meant",
  );
  expect(unclear("1,200", "comma")).toEqual({ is: "number", value: 1.2 });
  expect(unclear("1.200", "point")).toEqual({ is: "number", value: 1.2 });
  expect(unclear("about 1,200 hooks", "point")).toBeUndefined();
});

describe("a formula as the engine reads it", () => {
  test.each([
    ["=EASE(36 1/2, 39)", "=EASE(36.5; 39)"],
    ["=EASE(36½;39)", "=EASE(36.5;39)"],
    ["=EASE(1/2 in, 1 yd 9 in)", "=EASE(0.5; 45)"],
    ["=hem-1/2", "=hem-1/2"],
    ["=16-1/2", "=16-1/2"],
    ["=IF(TRUE, 1, false)", "=IF(TRUE(); 1; false())"],
    ["=SUM({1,2|3,4})", "=SUM({1;2|3;4})"],
    ["=SUM (A1)", "=SUM(A1)"],
    ["=1E3", "=1e3"],
    ["=A1\u00a0+\u00a0\n1", "=A1 + 1"],
    ["=2×3÷4−1", "=2*3/4-1"],
    ['="a, b"', '="a, b"'],
    ["=“box”", '="box"'],
    ['="say ""hem"""', '=("say "&CHAR(34)&"hem"&CHAR(34))'],
    ['="C:\\hem\\"', '=("C:"&CHAR(92)&"hem"&CHAR(92))'],
    ["=A1,B1", "=A1,B1"],
    ["=GIRTH_OVER(90; 0,3)", "=GIRTH_OVER(90; 0.3)"],
    ["=WITH_EASE(96; 2,5)", "=WITH_EASE(96; 2.5)"],
    ["=EASE(1,5 m; 42,5 cm)", "=EASE(59.05511811023622; 16.73228346456693)"],
    ["=28,5*2+(1,5-,5)", "=28.5*2+(1.5-.5)"],
    ["=CM(2,5)", "=CM(2.5)"],
    ["=SQRT(2,25)", "=SQRT(2.25)"],
    ["=MAX(1,2)", "=MAX(1;2)"],
    ["=MAX(A1,2,5)", "=MAX(A1;2;5)"],
    ["=MAX(1;ABS(2,5))", "=MAX(1;ABS(2.5))"],
    ["=SUM({1,5;2,5})", "=SUM({1.5;2.5})"],
    ["=27 in.+254 centimetres", "=27+100"],
    ["=5′ 3″", "=63"],
    ["=MAX(1;MAX(2,3))", "=#N/A"],
    ["=MAX(1, 2,3)", "=#N/A"],
    ["=MAX(1;2,3,4)", "=#N/A"],
    ["=MAX(1;,5)", "=#N/A"],
    ["=TRUE()", "=TRUE()"],
  ])("%s becomes %s", (typed, read) => {
    expect(toEngine(typed, "in")).toBe(read);
  });

  test("a figure of another unit is brought into the book's", () => {
    expect(toEngine("=42 cm+1", "in")).toBe(`=${42 / 2.54}+1`);
    expect(toEngine("=1/2 in", "cm")).toBe("=1.27");
    expect(toEngine("=36 1/2", "cm")).toBe("=36.5");
  });

  const hf = HyperFormula.buildFromArray([[2, 3]], engineConfig({ unit: "in" }));

  test("it gives what the hand that typed it meant", () => {
    const worked = (typed: string) => hf.calculateFormula(toEngine(typed, "in"), 0);
    expect(worked("=EASE(36 1/2, 39)")).toBe(2.5);
    expect(worked("=EASE(1 yd 1/2 in, 1 m)")).toBeCloseTo(100 / 2.54 - 36.5, 9);
    expect(worked("=IF(TRUE,A1,B1)")).toBe(2);
    expect(worked("=1E3/4")).toBe(250);
  });

  test("any text between quotes is worked as that very text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(hf.calculateFormula(toEngine(`="${text.replaceAll('"', '""')}"&""`, "in"), 0)).toBe(text);
      }),
      { seed: 20_260_511, numRuns: often(300) },
    );
  });

  test("any typed text is that text in the engine, never a formula, a number or a date", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: "binary" }),
          fc.constantFrom("=1", "'x", "''", "27", "2026-05-04", "TRUE", "50%", "#REF!", "$5"),
        ),
        (text) => {
          fc.pre(text.trim() !== "");
          hf.setCellContents({ sheet: 0, row: 1, col: 0 }, forEngine({ is: "text", value: text }));
          expect(hf.getCellValue({ sheet: 0, row: 1, col: 0 })).toBe(text);
        },
      ),
      { seed: 20_260_512, numRuns: often(300) },
    );
  });

  test("a date is the day that a calendar counts", () => {
    // Days from 1899-12-30, as spreadsheets count: 2026-05-04 is day 46146 (OpenFormula 1.2, 4.3.2, with that null date).
    hf.setCellContents({ sheet: 0, row: 1, col: 0 }, forEngine(understand("2026-05-04", "any", "in")));
    expect(hf.getCellValue({ sheet: 0, row: 1, col: 0 })).toBe(46_146);
  });

  test("no formula breaks the engine, however deep or long", () => {
    const deep = (n: number) => `=${"(".repeat(n)}1${")".repeat(n)}`;
    const formulas = [
      deep(MOST_NESTED),
      deep(MOST_NESTED + 1),
      deep(50_000),
      `=${"ABS(".repeat(MOST_NESTED)}1${")".repeat(MOST_NESTED)}`,
      `=${"-".repeat(500)}1`,
      `=1${"+1".repeat(499)}`,
      `=1${"+1".repeat(49_000)}`,
      `=SUM(1${";1".repeat(49_000)})`,
      `="${"x".repeat(99_000)}"`,
    ];
    for (const formula of formulas) {
      const built = HyperFormula.buildFromArray([[toEngine(formula, "in")]], engineConfig({ unit: "in" }));
      built.getCellValue({ sheet: 0, row: 0, col: 0 });
      built.destroy();
    }
  });
});

describe("figures in threes", () => {
  const SPACES = [" ", "\u00a0", "\u202f", "\u2009"];

  test("thousands parted by a space of any width, or an apostrophe, are one figure on a metric tape", () => {
    for (const space of [...SPACES, "'", "’"])
      for (const unit of ["cm", "mm"] as const) {
        const value = (text: string) =>
          (understand(text.replaceAll(" ", space), "length", unit) as { value: number }).value;
        expect(value("1 234,5")).toBe(1234.5);
        expect(value("-1 234.5")).toBe(-1234.5);
        expect(value("12 345")).toBe(12345);
        expect(value("1 234 567,25")).toBe(1234567.25);
        expect(value("1 234,567")).toBe(1234.567);
      }
    for (const space of SPACES)
      expect(understand(`1${space}234 mm`, "any", "cm")).toMatchObject({ is: "length", value: 123.4 });
  });

  test("on an inch tape a plain space is read before a decimal mark, and has two readings elsewhere", () => {
    expect(understand("1 234,5", "any", "in")).toEqual({ is: "number", value: 1234.5 });
    expect(understand("1\u00a0234", "any", "in")).toEqual({ is: "number", value: 1234 });
    expect(understand("36 116", "any", "in")).toEqual({
      is: "text",
      value: "36 116",
      unclear:
        "36 116 has two readings: 36116, or a fraction without its stroke, such as 36 1/16; type the one that is meant",
    });
    expect(understand("box 36 116", "any", "in")).toEqual({ is: "text", value: "box 36 116" });
  });

  test.each([
    "12 34",
    "1 2345",
    "1234 567",
    "0 123",
    "1 234 56",
    "1.234 567",
    "555-123 456 x",
    "1'234 in tight",
  ])("%s is a text and no figure in threes", (text) => {
    expect(understand(text, "any", "mm").is).toBe("text");
  });

  test("fractions, feet and inches keep their meaning", () => {
    expect(understand("1 3/4", "length", "in")).toMatchObject({ value: 1.75 });
    expect(understand("100 125/1000", "length", "cm")).toMatchObject({ value: 100.125 });
    expect(understand("5'10\"", "length", "in")).toMatchObject({ value: 70 });
    expect(understand("1'234\"", "length", "in")).toMatchObject({ value: 246 });
    expect(understand("1'234 in", "length", "in")).toMatchObject({ value: 246 });
  });
});

describe("a text that is meant as a number", () => {
  const why = (typed: string, kind: ColumnKind) => {
    const content = understand(typed, kind, "in");
    return content.is === "text" ? (content.unclear ?? "a text") : content.is;
  };

  test("says in a column of numbers why it is none", () => {
    expect(why("16 1/2x", "length")).toBe(
      '"16 1/2x" can\'t be read as a length and is kept as a text: type it as 16 1/2, or with its unit as 42 cm',
    );
    expect(why("3 1/0", "length")).toBe(
      '"3 1/0" has 0 under the stroke of its fraction and is kept as a text: type the number that is meant',
    );
    expect(why("4 mai 2026", "length")).toContain("can't be read as a length");
    for (const figure of ["１２", "٣٨", "१२"])
      expect(why(figure, "length")).toContain("can't be read as a length");
    expect(why("31 mai 2026x", "date")).toContain("can't be read as a day");
    expect(why("12 pcs", "number")).toContain("can't be read as a number");
  });

  test("in a column of anything a number with its fraction says so, and nothing else does", () => {
    expect(why("16 1/2x", "any")).toContain("can't be read as a number");
    expect(why("3 1/0", "any")).toContain("0 under the stroke");
    for (const typed of [
      "4 mai 2026",
      "2 hooks",

      "36-38",
      "12-34",
      "36 1/2 - 38 1/2",
      "no. 5",
      "16 1/2 is short",
    ])
      expect(why(typed, "any"), typed).toBe("a text");
    for (const kind of ["length", "number", "date"] as const)
      for (const typed of [
        "waist",
        "2nd fitting",
        "see page 3",
        "-",
        "3 fittings before the first night, in May",
      ])
        expect(why(typed, kind), typed).toBe("a text");
    for (const typed of ["16 1/2x", "3 1/0"]) expect(why(typed, "text")).toBe("a text");
  });
});
