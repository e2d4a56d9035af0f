import { expect, test } from "vitest";
import * as edit from "../../../src/book/edit.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const column = (heading: string) => ({ heading, kind: "any", width: 100 }) as const;
const PANEL = "M 0 0 L 27 0 L 27 40 L 0 40 Z";

const BOOK: Book = {
  ...blankBook("Withy Green", "in", "1/8"),
  pages: [
    {
      title: "Cut",
      stage: "Cut",
      columns: ["Piece", "Outline", "How many", "Cloth", "Note"].map(column),
      rows: [
        ["front", PANEL, "2", "wool"],
        ["back", "=RECTANGLE(27; 40)", "1", "wool"],
        ["lining", PANEL, "2", "linen, from the old sheets"],
        [],
        ["needed", '=YARDAGE(cut_list; 54; "wool")'],
        ["needed", '=YARDAGE(cut_list; IN(54); "linen"; FALSE; 1/4)'],
        ["enough?", '=CLOTH_CHECK(A1:E3; 54; 45; "linen")'],
      ],
      notes: {},
    },
  ],
  names: { cut_list: "Cut!A1:E3" },
};

const answers = (engine: Engine, at = 1) =>
  [4, 5, 6].map((row) => {
    const { value, problem } = engine.view({ page: 0, row, column: at });
    return problem && problem.is !== "verdict" ? problem.sentence : value;
  });

test("a formula names the cut list and the page's headings say what each column is, as they stand now", () => {
  const engine = new Engine(BOOK, layDesk);
  expect(answers(engine)).toEqual([80, expect.closeTo(80.25), "ok"]);
  expect(checks(engine)).toEqual([]);
  expect(engine.kinds.of({ page: 0, row: 0, column: 1 })).toBe("piece");
  const headed = (heading: string) => edit.changeColumn(BOOK, 0, 2, { heading });
  engine.become(headed("Copies"));
  expect(answers(engine)[0]).toBe(80);
  engine.become(headed("Sort"));
  expect(answers(engine)[0]).toBe(
    'the cut list has no column "how many": give that heading to the column with how many to cut; a pair counts as 2',
  );
  engine.become(headed("How may"));
  expect(answers(engine)[0]).toBe('the cut list has a column headed "how may"; is "how many" meant?');
  // A row put in within the list is cut too; columns that change places are read all the same.
  engine.become(edit.type(edit.insertRows(BOOK, 0, 2, 1), [
    { page: 0, row: 2, column: 1, typed: PANEL },
    { page: 0, row: 2, column: 2, typed: "2" },
    { page: 0, row: 2, column: 3, typed: "Wool" },
  ])); // biome-ignore format: cells
  expect(engine.value({ page: 0, row: 5, column: 1 })).toBe(120);
  engine.become(edit.insertColumns(BOOK, 0, 0, 1));
  expect(answers(engine, 2)[0]).toBe(80);
  engine.destroy();
});

test("in another unit the list needs the same cloth", () => {
  const engine = new Engine(convertBook(BOOK, "cm"), layDesk);
  expect(answers(engine).slice(0, 2)).toEqual([
    expect.closeTo(80 * 2.54, 6),
    expect.closeTo(80.25 * 2.54, 1),
  ]);
  expect(engine.book.pages[0]!.rows[4]![1]).toBe('=YARDAGE(cut_list; IN(54); "wool")');
  engine.destroy();
});

test("a wrong text in a cut list is a problem of the formula, which leads to the cell and marks it", () => {
  const typed = (row: number, column: number, text: string) =>
    edit.type(BOOK, [{ page: 0, row, column, typed: text }]);
  const engine = new Engine(typed(1, 2, "one"), layDesk);
  const needed = { page: 0, row: 4, column: 1 };
  const wrong = { page: 0, row: 1, column: 2 };
  expect(engine.view(needed).problem).toEqual({
    is: "error",
    sentence: 'how many of back must be a whole number, not "one"',
    from: needed,
    at: [wrong],
  });
  expect(checks(engine).map(({ address, at }) => [address, at.map((one) => engine.address(one))])).toEqual([
    ["Cut!B5", ["Cut!C2"]],
  ]);
  expect(engine.saidOf(wrong).map(({ by }) => by.row)).toEqual([4]);
  // A half-filled row leads to the blank cell; a list given column by column leads to its cell too.
  engine.become(typed(1, 2, ""));
  expect(engine.view(needed).problem?.at).toEqual([wrong]);
  engine.become(edit.type(typed(1, 2, "one"), [{ ...needed, typed: "=YARDAGE(B1:B3; C1:C3; 54)" }]));
  expect(engine.view(needed).problem).toMatchObject({ sentence: 'quantities, number 2, must be a whole number, not "one"', at: [wrong] });
  // A refusal that the formula passes over is nobody's problem.
  engine.become(edit.type(typed(1, 2, "one"), [{ ...needed, typed: '=IFERROR(YARDAGE(cut_list; 54; "wool"); 0)' }, { page: 0, row: 6, column: 1, typed: "" }]));
  expect(checks(engine)).toEqual([]);
  expect(engine.saidOf(wrong)).toEqual([]);
  // It goes when it is put right.
  engine.become(BOOK);
  expect([checks(engine), engine.saidOf(wrong)]).toEqual([[], []]);
  engine.destroy();
}); // biome-ignore format: sentences
