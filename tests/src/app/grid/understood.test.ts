import { expect, test } from "vitest";
import { understood } from "../../../../src/app/grid/understood.ts";
import { blankBook } from "../../../../src/book/shape.ts";
import { pasteBlock } from "../../../../src/store/commands.ts";

const lines = (text: string) => understood(text, null);

test("tabs part cells beyond doubt, whatever else stands in the lines", () => {
  expect(lines("skirt;x\t28,5\r\nband\t30\n")).toEqual({
    cells: [
      ["skirt;x", "28,5"],
      ["band", "30"],
    ],
    doubt: null,
    other: null,
  });
});

test("lines that semicolons or commas cut evenly are columns, and how they were taken is said", () => {
  const list = lines('piece;width\nskirt;28,5\n"a; b";30\n');
  expect(list.cells).toEqual([
    ["piece", "width"],
    ["skirt", "28,5"],
    ["a; b", "30"],
  ]);
  expect(list.doubt).toBe("the text was taken as 2 columns separated by semicolons");
  expect(list.other?.cells[1]).toEqual(["skirt;28,5"]);
  expect(lines("piece,width\nskirt,28").cells).toEqual([
    ["piece", "width"],
    ["skirt", "28"],
  ]);
});

test("commas of figures and of sentences stay, and the other reading is offered", () => {
  const figures = lines("28,5\n30,5");
  expect(figures.cells).toEqual([["28,5"], ["30,5"]]);
  expect(figures.other?.cells).toEqual([
    ["28", "5"],
    ["30", "5"],
  ]);
  const prose = lines("waist, tight\nhip, loose");
  expect(prose.cells).toEqual([["waist, tight"], ["hip, loose"]]);
  expect(prose.doubt).toBe("the commas were taken as part of the text");
  for (const text of ["one, line", "a;b\nc", "=SUM(A1;B1)\n=SUM(A2;B2)", ""])
    expect(lines(text).doubt).toBeNull();
});

test("a table is taken where the text has no tabs, and what was doubtful in it is said", () => {
  const table = {
    cells: [
      ["waist", "27"],
      ["hip", ""],
    ],
    spanning: 1,
    tables: 2,
  };
  const read = understood("waist\n27\nhip", table);
  expect(read.cells).toBe(table.cells);
  expect(read.doubt).toBe(
    "1 cell of the table spanned several, and the text stands in the first; of 2 tables only the first was pasted",
  );
  expect(read.other?.cells).toEqual([["waist"], ["27"], ["hip"]]);
  expect(understood("waist\t27", table).cells).toEqual([["waist", "27"]]);
});

test("a block larger than a page is refused in one sentence that says where it would end", () => {
  const blank = blankBook("Withy Green", "in", "1/8");
  const paste = pasteBlock({ page: 0, row: 1, column: 1 }, Array<string[]>(20_000).fill(["1", "2"]));
  expect(paste.edit(blank)).toEqual({
    refusal:
      "the pasted block would end at C20001, and a page has at most 20000 rows and 200 columns; paste a part of it",
  });
});
