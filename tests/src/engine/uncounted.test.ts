import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readTape } from "../../../functions/fractions.ts";
import type { Unit } from "../../../functions/units.ts";
import { type Book, blankBook, type ColumnKind } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { countColumn, pasteBlock } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

/** One page with these rows, its columns of these kinds; B is of any kind and A of text when left out. */
function page(
  rows: readonly (readonly string[])[],
  kinds: readonly ColumnKind[] = [],
  unit: Unit = "in",
): Book {
  const blank = blankBook("Withy Green", unit, unit === "in" ? "1/8" : "1 mm");
  const wide = Math.max(...rows.map((row) => row.length));
  const columns = Array.from({ length: wide }, (_, i) => ({
    heading: "",
    kind: kinds[i] ?? (i === 0 ? "text" : "any"),
    width: 100,
  }));
  return { ...blank, pages: [{ ...blank.pages[0]!, columns, rows }], names: {} };
}

function problems(book: Book): string[] {
  const engine = new Engine(book, layDesk);
  const list = checks(engine).map(
    ({ address, sentence }) => `${address.replace("Measure!", "")}: ${sentence}`,
  );
  engine.destroy();
  return list;
}

const value = (book: Book, row: number, column: number) => {
  const engine = new Engine(book, layDesk);
  const found = engine.value({ page: 0, row, column });
  engine.destroy();
  return found;
};

/** A list down column B with a label at the left of each figure, and a formula beneath the list. */
const list = (figures: readonly string[], formula: string, kind: ColumnKind = "any") =>
  page([...figures.map((typed, i) => [`wearer ${i + 1}`, typed]), ["", "", formula]], ["text", kind]);

describe("a figure in a column of text", () => {
  const measures = [
    ["waist", "tight", "27 1/4"],
    ["hip", "over pad", "38 1/4"],
    ["nape to waist", "", "15"],
  ];

  test("is a problem as soon as a formula needs it, and one act makes the column count", () => {
    const store = new Store(blankBook("Withy Green", "in", "1/8"), layDesk);
    store.run(pasteBlock({ page: 0, row: 0, column: 0 }, [...measures, ["", "=MAX(C1:C3)"], ["", "=C2+1"]]));
    expect(
      checks(store.engine).map(({ address, sentence, waiting }) => [address, sentence, waiting]),
    ).toEqual([
      [
        "Measure!C1",
        'C1, C2 and C3 read as numbers but column C holds text, so Measure!B4 can\'t count them; set column C to hold "anything"',
        1,
      ],
    ]);
    // The formula with an error waits for the text.
    expect(store.engine.view({ page: 0, row: 4, column: 1 }).problem).toMatchObject({
      is: "error",
      from: { page: 0, row: 1, column: 2 },
    });
    for (const row of [0, 1, 2])
      expect(store.engine.view({ page: 0, row, column: 2 }).problem?.is, `row ${row}`).toBe("uncounted");
    // A formula that has an answer says beside it what the answer leaves out.
    expect(store.engine.view({ page: 0, row: 3, column: 1 })).toMatchObject({
      shown: "0",
      problem: {
        is: "uncounted",
        sentence: expect.stringMatching(/^waist, Taken over \(Measure!C1\): C1, C2 and C3 read as numbers/),
      },
    });
    const [check] = checks(store.engine);
    const before = store.book;
    store.run(countColumn(check!.column!.page, check!.column!.column));
    expect(checks(store.engine)).toEqual([]);
    expect(store.engine.value({ page: 0, row: 3, column: 1 })).toBe(38.25);
    expect(store.engine.value({ page: 0, row: 4, column: 1 })).toBe(39.25);
    store.undo();
    expect(store.book).toEqual(before);
  });

  test("is no problem while no formula needs a figure from it, and a text for a text is none ever", () => {
    expect(problems(page([...measures, ["", "=A1&C1"]], ["text", "any", "text"]))).toEqual([]);
    expect(problems(page([["2", '=IF(A1="2";"two";"")']]))).toEqual([]);
    expect(problems(page([["1/8", "=ROUND_TAPE(3.1; A1)"]]))).toEqual([]);
  });

  test.each(["=C1*2", "=-C1", "=MAX(C1;2)", "=ROUND(C1;0)", "=IF(C1>20;1;2)", "=IF(B1=C1;1;2)", "=EASE(C1;39)",
    "=IF(B1=2;C1;0)+1", "=SUM(C:C)", "=SUM(2:2;1:1)", "=COUNT(C1:C3)", "=SQRT(C1)", "=SUMIF(A1:A3;\"x\";C1:C3)"])(
    "is a problem for %s",
    (formula) => {
      const book = page([["a", "2", "38"], ["b", "2", "39"], ["c", "2", ""], ["", formula]], ["text", "any", "text"]);
      expect(problems(book).join("\n")).toContain("column C holds text");
    },
  ); // biome-ignore format: a list

  test("is found through a cell that repeats it", () => {
    const book = page(
      [
        ["waist", "=C1", "38 1/4"],
        ["", "=SUM(B1;2)"],
      ],
      ["text", "any", "text"],
    );
    expect(problems(book)).toEqual([
      `C1: "38 1/4" reads as a number but column C holds text, so Measure!B2 can't count it; set column C to hold "anything"`,
    ]);
  });
});

describe("a hole in a list", () => {
  const twelve = ["28", "28 1/2", "27", "30", "26 1/4", "29", "31", "27 1/2", "28", "33", "24 3/8", "32"];

  test.each(["SUM", "MAX", "MIN", "AVERAGE", "MEDIAN"])(
    "that %s passes over is told once, and a 0 or a - ends it",
    (name) => {
      const formula = `=${name}(B1:B12)`;
      const holed = twelve.with(4, "").with(7, "");
      expect(problems(list(twelve, formula))).toEqual([]);
      expect(problems(list(holed, formula))).toEqual([
        expect.stringMatching(
          /^B5: B5 and B8 are empty within the list B1:B12 that Measure!C13 .*: type a number, or 0 or - where there is no number$/,
        ),
      ]);
      expect(problems(list(holed.with(4, "0").with(7, "-"), formula))).toEqual([]);
    },
  );

  test("says who adds it up", () => {
    const book = { ...list(twelve.with(4, ""), "=SUM(B1:B12)"), names: { total: "Measure!C13" } };
    expect(problems(book)).toEqual([
      "B5: B5 is empty within the list B1:B12 that total (Measure!C13) adds up: type a number, or 0 or - where there is no number",
    ]);
  });

  test("that is a text is told with what it holds", () => {
    expect(problems(list(twelve.with(4, "n/a"), "=AVERAGE(B1:B12)"))).toEqual([
      `B5: B5 holds the text "n/a" within the list B1:B12 that Measure!C13 averages, and is not counted: type a number, or - where there is no number`,
    ]);
    for (const kind of ["any", "length", "number"] as const)
      for (const row of [0, 4, 11])
        expect(
          problems(list(twelve.with(row, "38 1/4 ?"), "=SUM(B1:B12)", kind)),
          `${kind} ${row}`,
        ).toHaveLength(1);
  });

  test("with a decimal comma of two readings asks which is meant", () => {
    expect(problems(list(["28,5", "1,234", "27"], "=SUM(B1:B3)"))).toEqual([
      "B2: 1,234 has two readings: 1.234 with the comma as its decimal mark, or 1234; type the one that is meant",
    ]);
    expect(value(list(["28,5", "30", "27"], "=SUM(B1:B3)"), 3, 2)).toBe(85.5);
  });

  test("a figure with two readings is asked about wherever it stands, but not in a column of text", () => {
    expect(
      problems(
        page([
          ["about 1,200", "1,200"],
          ["1,200", "-1,250 mm"],
        ]),
      ),
    ).toEqual([
      expect.stringMatching(
        /^B1: 1,200 has two readings: 1\.200 with the comma as its decimal mark, or 1200;/,
      ),
      expect.stringMatching(/^B2: 1,250 has two readings/),
    ]);
  });

  test("one decimal comma among twelve waists counts like the others", () => {
    const waists = ["28 1/2", "30", "27 1/4", "31 1/8", "29", "33 3/4", "26", "35 1/2", "28", "38", "38"];
    const sum = waists.map((typed) => readTape(typed, "in")!.length).reduce((a, b) => a + b, 0);
    const book = list([...waists, "28,5"], "=SUM(B1:B12)");
    expect(problems(book)).toEqual([]);
    expect(sum).toBe(345.125);
    expect(value(book, 12, 2)).toBe(373.625);
  });

  test("is not seen in headings, in what follows the last figure, in empty lines, or where a formula asks", () => {
    expect(
      problems(
        page([
          ["Who", "Waist"],
          ["the widow", "28"],
          ["Bess", "27"],
          ["", ""],
          ["", "", "=SUM(B1:B20)"],
        ]),
      ),
    ).toEqual([]);
    expect(
      problems(
        page([
          ["the widow", "28", "2"],
          ["", "", ""],
          ["Bess", "27", "1"],
          ["", "", "", "=SUMPRODUCT(B1:B3;C1:C3)+SUM(B1:C3)"],
        ]),
      ),
    ).toEqual([]);
    expect(problems(list(["28", "", "27"], "=IF(COUNTBLANK(B1:B3)>0;0;SUM(B1:B3))"))).toEqual([]);
    expect(problems(list(["28", "", "27"], "=COUNTA(B1:B3)"))).toEqual([]);
  });

  test("at the head of a list of several figures is told as well", () => {
    expect(problems(list(twelve.with(0, ""), "=SUM(B1:B12)"))).toHaveLength(1);
  });
});

describe("a blank measurement beside a sign", () => {
  test.each([
    [[["waist", "", "=B1+2"]], "B1"],
    [
      [
        ["waist", "28 in", ""],
        ["", "=B1+C1"],
      ],
      "C1",
    ],
    [[["waist", "", "=MAX(B1;20)"]], "B1"],
    [[["waist", "", "=IF(B1>30;1;2)"]], "B1"],
  ] as [string[][], string][])("in %j is told, without a name too", (rows, address) => {
    expect(problems(page(rows))).toEqual([
      expect.stringMatching(
        new RegExp(`^${address}: this is empty, and (?:waist \\()?Measure!\\w+\\)? counts it as 0`),
      ),
    ]);
  });

  test("is no problem where the formula asks whether it is blank, or where the whole line is blank", () => {
    expect(
      problems(
        page([
          ["extra", "", '=IF(B1="";40;40+B1)'],
          ["extra", "", "=IF(ISBLANK(B2);40;40+B2)"],
        ]),
      ),
    ).toEqual([]);
    expect(problems(page([["", "", "", "=B1+C1"]]))).toEqual([]);
  });
});

test("a list is whole or has a problem: taking any figure out of the middle is never passed over", () => {
  const figures = fc.array(fc.integer({ min: 20, max: 60 }).map(String), { minLength: 4, maxLength: 12 });
  fc.assert(
    fc.property(figures, fc.nat(), fc.constantFrom("", "n/a", "?", "1,234"), (all, at, hole) => {
      const row = 1 + (at % (all.length - 2));
      const formula = `=SUM(B1:B${all.length})`;
      expect(problems(list(all, formula))).toEqual([]);
      const [problem, ...more] = problems(list(all.with(row, hole), formula));
      expect(problem).toContain(`B${row + 1}`);
      expect(more).toEqual([]);
    }),
    { seed: 20_260_602, numRuns: 25 },
  );
});

describe("a number in a column of lengths that a function takes for something else", () => {
  const rows = [
    ["shrinkage", "0.03", "=SHRINK_ALLOW(100;B1)"],
    ["seams", "2", "=TAKE_IN_EACH(4;B2)"],
    ["girth", "27", "=B3+1"],
  ];
  const book = page(rows, ["text", "length"]);

  test("is a problem at once, which names the cell and the argument", () => {
    expect(problems(book)).toEqual([
      "B1: 0.03 is a length here, and the argument share of SHRINK_ALLOW needs a share: column B holds lengths, so move this one to a column that holds numbers",
      "B2: 2 is a length here, and the argument seams of TAKE_IN_EACH needs a count: column B holds lengths, so move this one to a column that holds numbers",
    ]);
    const engine = new Engine(book, layDesk);
    expect(engine.view({ page: 0, row: 0, column: 2 }).problem).toMatchObject({
      is: "uncounted",
      sentence: expect.stringContaining("the argument share of SHRINK_ALLOW needs a share"),
    });
    engine.destroy();
  });

  test("stays as it is when the book's unit changes, and no answer moves", () => {
    const other = convertBook(book, "cm");
    expect(other.pages[0]!.rows.map((row) => row[1])).toEqual(["0.03", "2", "68.58"]);
    expect([0, 1, 2].map((row) => value(other, row, 2))).toEqual(
      [0, 1, 2].map((row) => expect.closeTo(2.54 * (value(book, row, 2) as number), 6)),
    );
    const back = convertBook(other, "in");
    expect(back.pages[0]!.rows.map((row) => row[1])).toEqual(["0.03", "2", "27"]);
  });

  test("is a problem also where formulas use it as a length too, or where it is typed with its unit", () => {
    const both = page(
      [
        ["drop", "8", "=TAKE_IN_EACH(4;B1)", "=B1+27 in"],
        ["seams", "2 in", "=TAKE_IN_EACH(4;B2)"],
      ],
      ["text", "length"],
    );
    expect(problems(both)).toEqual([
      "B1: 8 is a length here, and the argument seams of TAKE_IN_EACH needs a count: formulas use it as a length too, so give the other number a cell of its own",
      "B2: 2 in is a length here, and the argument seams of TAKE_IN_EACH needs a count: type a number without a unit",
    ]);
  });

  test("is one problem for a whole list of them", () => {
    const seams = [
      ["front", "10", "2"],
      ["back", "12", "3"],
      ["", "", "", "=YARDAGE(RECTANGLE(5;5);C1;54)"],
    ];
    expect(problems(page(seams, ["text", "length", "length"])).length).toBe(1);
  });
});

test("a text that is meant as a length is one problem at its cell, whether or not a formula needs it", () => {
  const said =
    '"16 1/2x" can\'t be read as a length and is kept as a text: type it as 16 1/2, or with its unit as 42 cm';
  const book = (...formula: string[]) =>
    page(
      [
        ["waist", "16 1/2x", ...formula],
        ["hip", "40"],
      ],
      ["text", "length"],
    );
  expect(problems(book())).toEqual([`B1: ${said}`]);
  expect(problems(book("=WITH_EASE(B1;2)"))).toEqual([`B1: ${said}`]);
  expect(problems(book("=B1*2"))).toEqual([`B1: ${said}`]);
  expect(problems(book("=SUM(B1:B2)"))).toEqual([`B1: ${said}`]);
  const mended = page([["waist", "16 1/2", "=WITH_EASE(B1;2)"]], ["text", "length"]);
  expect(problems(mended)).toEqual([]);
});

test("a length typed where a count is needed is one problem in the maker's words, whether or not it is refused", () => {
  const book = (typed: string) =>
    page([
      ["pleats", typed],
      ["depth", "1"],
      ["hidden", "=PLEAT_ALLOWANCE(B1;B2)"],
      ["after", "=B3+1"],
    ]);
  for (const typed of ["91.4 cm", "3 in"])
    expect(problems(book(typed)), typed).toEqual([
      `B1: ${typed} is a length here, and the argument count of PLEAT_ALLOWANCE needs a count: type a number without a unit`,
    ]);
  expect(problems(book("3"))).toEqual([]);
});
