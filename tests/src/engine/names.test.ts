import { expect, test } from "vitest";
import * as edit from "../../../src/book/edit.ts";
import { nameBlock } from "../../../src/book/naming.ts";
import type { Book, Page } from "../../../src/book/shape.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { dependents } from "../../../src/engine/dependents.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { precedents } from "../../../src/engine/references.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { typeCells } from "../../../src/store/commands.ts";
import { lengthenList } from "../../../src/store/names.ts";
import { Store } from "../../../src/store/store.ts";

const COLUMN = { heading: "", kind: "any", width: 100 } as const;
const page = (title: string, rows: string[][], names?: Page["names"]): Page => ({
  title,
  stage: "Cut",
  columns: [COLUMN, COLUMN, COLUMN],
  rows,
  notes: {},
  ...(names && { names }),
});

const BOOK: Book = {
  ...blankBook("Withy Green", "in", "1/8"),
  pages: [
    page("Cut", [["front", "2", "9 1/2"], ["back", "1", "8"], ["cuff", "4", "3"], [], ["", "=SUM(how_many)", "=MAX(widths)+1"], ["", "=INDEX(pieces;2)", '=SUMIF(pieces;"cuff";how_many)'], ["", "=ROWS(how_many)", "=VLOOKUP(\"back\";cut_list;2;FALSE)"]]),
    page("Miller", [["waist", "27"], ["hem", "=waist*3"]], { waist: "Miller!B1", hem: "Miller!B2" }),
    page("Widow", [["waist", "34"], ["hem", "=waist*3"]], { waist: "Widow!B1" }),
    page("Trimmings", [["binding", "=hem+2"], ["both", "=Miller!waist+Widow!waist"], ["?", "=waist"], ["?", "=pieces"], ["?", "=Miller!wiast"], ["?", "=Millr!waist"]]),
  ],
  names: { how_many: "Cut!B1:B3", pieces: "Cut!A1:A3", widths: "Cut!C1:C3", cut_list: "Cut!A1:C3" },
}; // biome-ignore format: tables

const valueAt = (engine: Engine, at: number, row: number, column = 1) => {
  const { value, problem } = engine.view({ page: at, row, column });
  return problem?.is === "error" ? problem.sentence : value;
};

test("a named list works in every function as its range does", () => {
  const engine = new Engine(BOOK, layDesk);
  expect([4, 5, 6].map((row) => [valueAt(engine, 0, row), valueAt(engine, 0, row, 2)])).toEqual([
    [7, 10.5],
    ["back", 4],
    [3, 1],
  ]);
  expect(precedents(BOOK, "=SUM(how_many)", 3)).toHaveLength(3);
  expect(dependents(BOOK, { page: 0, row: 1, column: 1 })).toHaveLength(4);
  expect(engine.evaluate("=SUM(how_many)", 2)).toMatchObject({ value: 7 });
  engine.destroy();
});

test("names of a page are used plainly on it and with its page elsewhere, and what is unclear is said", () => {
  const engine = new Engine(BOOK, layDesk);
  expect([valueAt(engine, 1, 1), valueAt(engine, 2, 1)]).toEqual([81, 102]);
  expect([0, 1, 2, 3, 4, 5].map((row) => valueAt(engine, 3, row))).toEqual([
    83,
    61,
    '2 pages have a name "waist", and this page does not: write Miller!waist or Widow!waist',
    "pieces is a list (Cut!A1:A3), and a cell holds one value: use it in a function, such as =COUNTA(pieces)",
    'no cell is named "Miller!wiast"; is Miller!waist meant?',
    'there is no page called "Millr"; is Miller meant?',
  ]);
  engine.destroy();
});

test("an engine that follows the names says what one built anew says", () => {
  const engine = new Engine(BOOK, layDesk);
  const cell = (at: number, row: number) => ({ page: at, top: row, left: 1, bottom: row, right: 1 });
  const steps: ((book: Book) => Book)[] = [
    (book) => nameBlock(book, cell(2, 1), "hem", 2),
    (book) => nameBlock(book, { page: 0, top: 0, left: 1, bottom: 1, right: 1 }, "few", null),
    (book) => edit.type(book, [{ page: 3, row: 6, column: 1, typed: "=SUM(few)+hem" }]),
    (book) => edit.insertRows(book, 0, 1, 1),
    (book) => edit.type(book, [{ page: 0, row: 1, column: 1, typed: "10" }]),
    (book) => nameBlock(book, cell(3, 0), "waist", null),
    (book) => edit.renamePage(book, 1, "Anne's"),
    (book) => nameBlock(book, { page: 0, top: 0, left: 1, bottom: 2, right: 1 }, "", null),
    (book) => edit.removePage(book, 2),
    (book) => nameBlock(book, cell(2, 0), "", null),
    () => BOOK,
  ];
  let book = BOOK;
  for (const [i, step] of steps.entries()) {
    book = step(book);
    engine.become(book);
    const anew = new Engine(book, layDesk);
    book.pages.forEach(({ rows }, at) => {
      rows.forEach((row, r) => {
        row.forEach((_, column) => {
          const place = { page: at, row: r, column };
          const told = (one: Engine) => [one.view(place).shown, one.view(place).problem?.sentence];
          expect(told(engine), `step ${i}, ${anew.address(place)}`).toEqual(told(anew));
        });
      });
    });
    anew.destroy();
  }
  engine.destroy();
});

test("another unit moves no answer that rests on a named list, and a list's figures are known for lengths", () => {
  const engine = new Engine(BOOK, layDesk);
  expect(engine.kinds.of({ page: 0, row: 1, column: 2 })).toBe("length");
  const before = valueAt(engine, 0, 4, 2) as number;
  engine.become(convertBook(BOOK, "cm"));
  expect(valueAt(engine, 0, 4, 2)).toBeCloseTo(before * 2.54, 9);
  engine.destroy();
});

test("what is blank or a text within a named list is said, and so is what stands directly beneath it", () => {
  const typed = (row: number, column: number, text: string) => ({ page: 0, row, column, typed: text });
  const said = (book: Book) => {
    const engine = new Engine(book, layDesk);
    const list = checks(engine)
      .filter(({ place }) => place.page === 0)
      .map(({ address, sentence }) => `${address}: ${sentence}`);
    engine.destroy();
    return list;
  };
  expect(said(BOOK)).toEqual([]);
  expect(said(edit.type(BOOK, [typed(1, 1, "")]))).toEqual([
    expect.stringMatching(/^Cut!B2: B2 is empty within the list B1:B3 that Cut!B5 adds up/),
  ]);
  expect(said(edit.type(BOOK, [typed(3, 1, "6")]))).toEqual([
    "Cut!B4: this stands directly beneath how_many (B1:B3) and is not counted: insert a row within the list, or name the longer list",
  ]);
  // A label beneath it, or the sum of the list itself, is no part that was forgotten.
  expect(said(edit.type(BOOK, [typed(3, 1, "all together")]))).toEqual([]);
  expect(said(edit.type(BOOK, [typed(3, 1, "=SUM(B1:B3)")]))).toEqual([]);
});

test("a list counts what stands beneath it once it is lengthened, down to the last number there", () => {
  const store = new Store(BOOK, layDesk);
  const total = () => valueAt(store.engine, 0, 4, 1);
  const before = total() as number;
  store.run(typeCells([{ page: 0, row: 3, column: 1, typed: "6" }]));
  expect(total()).toBe(before);
  const lengthened: string[] = [];
  for (;;) {
    const found = [...store.engine.uncounted.values()].find(({ beneath }) => beneath)?.beneath;
    if (!found) break;
    lengthened.push(`${found.list.name} to ${found.to}`);
    expect(store.run(lengthenList(found.list.name, found.list.of, found.to))).toBeNull();
  }
  // The list of the numbers, then the list of whole rows that they stand beneath as well.
  expect(lengthened).toEqual(["how_many to 3", "cut_list to 3"]);
  expect(total()).toBe(before + 6);
  store.undo();
  store.undo();
  expect(total()).toBe(before);
});
