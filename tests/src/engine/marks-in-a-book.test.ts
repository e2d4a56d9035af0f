import { expect, test } from "vitest";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { convertBook } from "../../../src/engine/convert.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const column = { heading: "", kind: "any" as const, width: 100 };
const bookOf = (rows: string[][]): Book => ({
  ...blankBook("Marks", "in", "1/8"),
  pages: [{ title: "Draft", stage: "Draft", columns: [column, column], rows, notes: {} }],
});

test("a typed list and a worked-out one mean the same after a change of unit, and no problem is made of the text", () => {
  const book = bookOf([
    ["1; 3 1/2; 6 in"],
    ["=SPACED_MARKS(3;1;2 1/2)"],
    ["=MARK_AT(A1;2)"],
    ["=MARK_AT(A2;2)"],
    ["=OPEN_PLEATS(RECTANGLE(24;10);A2;1/2)"],
    ["=PIECE_WIDTH(A5)"],
    ['=EDGE_LENGTH(WITH_MARKS(A5;1;MARKS(A1:A2));1)'],
  ]); // biome-ignore format: a row each
  const answers = (one: Book) => {
    const engine = new Engine(one, layDesk);
    expect(checks(engine)).toEqual([]);
    return [2, 3, 5, 6].map((row) => engine.value({ page: 0, row, column: 0 }) as number);
  };
  const [before, after] = [answers(book), answers(convertBook(book, "cm"))];
  expect(before.slice(0, 3)).toEqual([3.5, 3.5, 27]);
  after.forEach((value, i) => {
    expect(value).toBeCloseTo(before[i]! * 2.54, 9);
  });
  expect(convertBook(book, "cm").pages[0]!.rows[0]![0]).toBe("1; 3 1/2; 6 in");
});

test("a list is shown as the tape has it and goes on in full", () => {
  const engine = new Engine(bookOf([["=BUTTON_MARKS(14 1/2;6)"], ["=MARK_AT(A1;3)"]]), layDesk);
  expect(engine.view({ page: 0, row: 0, column: 0 }).shown).toBe("0; 2 7/8; 5 3/4; 8 3/4; 11 5/8; 14 1/2 in");
  expect(engine.value({ page: 0, row: 1, column: 0 })).toBeCloseTo(5.8, 10);
  engine.destroy();
});
