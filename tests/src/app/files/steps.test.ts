import fc from "fast-check";
import { expect, test } from "vitest";
import { readSteps, writeSteps } from "../../../../src/app/files/steps.ts";
import { readBook } from "../../../../src/book/read.ts";
import { type Book, blankBook } from "../../../../src/book/shape.ts";
import { asWritten, writeBook } from "../../../../src/book/write.ts";
import { layDesk } from "../../../../src/lay/desk.ts";
import { hideRows, moveRows } from "../../../../src/store/arranging.ts";
import { insertRows, removeColumns, renamePage, typeCells } from "../../../../src/store/commands.ts";
import { nameCell } from "../../../../src/store/names.ts";
import { type Command, Store } from "../../../../src/store/store.ts";

const at = (row: number, column: number) => ({ page: 0, row, column });
const command: fc.Arbitrary<Command> = fc.oneof(
  fc
    .tuple(fc.nat(5), fc.nat(3), fc.constantFrom("27", "", "=A1*2", "linen"))
    .map(([row, column, typed]) => typeCells([{ ...at(row, column), typed }])),
  fc.nat(4).map((row) => insertRows(0, row, 2)),
  fc.nat(4).map((row) => moveRows(0, row, 1, row + 3)),
  fc.nat(4).map((row) => hideRows(0, row, 1)),
  fc.constant(removeColumns(0, 1, 1)),
  fc.constantFrom("Figures", "Draft 2").map((title) => renamePage(0, title)),
  fc.constantFrom("waist", "").map((name) => nameCell(at(0, 0), name)),
);
const reopened = (book: Book): Book => {
  const reading = readBook(writeBook(book));
  if ("reason" in reading) throw new Error(reading.reason);
  return reading.book;
};

test("the steps of a book that is closed and opened again lead back through the same books", () => {
  fc.assert(
    fc.property(fc.array(command, { maxLength: 12 }), (list) => {
      const store = new Store(blankBook("Withy Green", "in", "1/8"), layDesk);
      for (const one of list) store.run(one);
      const book = reopened(store.book);
      const again = new Store(blankBook("Another", "cm", "1 mm"), layDesk);
      expect(again.open(book, readSteps(writeSteps(store.past, store.book), book))).toBeNull();
      const steps = store.past.length;
      for (let i = 0; i < steps; i += 1) {
        expect(again.undoable).toBe(store.undoable);
        expect([store.undo(), again.undo()]).toEqual([null, null]);
        expect(writeBook(again.book)).toBe(writeBook(store.book));
      }
      expect(again.undoable).toBeUndefined();
    }),
    { seed: 20_261_127, numRuns: 20 },
  );
});

test("steps that do not fit the book are left out, and only the last fifty are kept", () => {
  const store = new Store(blankBook("Withy Green", "in", "1/8"), layDesk);
  for (let i = 0; i < 60; i += 1) store.run(typeCells([{ ...at(0, 0), typed: String(i) }]));
  const texts = writeSteps(store.past, store.book);
  expect(texts).toHaveLength(50);
  const short = { ...store.book, pages: [] };
  expect(readSteps(texts, short)).toEqual([]);
  expect(readSteps([...texts.slice(0, -1), "{"], store.book)).toEqual([]);
  expect(asWritten(readSteps(texts, store.book)[0]!.book).pages[0]!.rows[0]).toEqual(["9"]);
});
