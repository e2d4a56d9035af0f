import { expect, test } from "vitest";
import { copyPage } from "../../../src/book/copy-page.ts";
import * as edit from "../../../src/book/edit.ts";
import { readBook } from "../../../src/book/read.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { writeBook } from "../../../src/book/write.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { copyPage as copyCommand } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const column = { heading: "", kind: "any", width: 100 } as const;
const page = (title: string, rows: string[][]) => ({
  title,
  stage: "Draft" as const,
  columns: [column, column, column],
  rows,
  notes: {},
});

const BOOK: Book = {
  ...blankBook("Withy Green", "in", "1/8"),
  pages: [
    page("Measure", [["waist", "27"], ["ease", "1"]]),
    { ...page("Draft", [["waist", "=Measure!B1+ease"], ["depth", "9"], ["hem", "=waist_over*2+depth"], ["all", "=SUM(figures)+Draft!B2"]]), notes: { B2: "try 10" }, names: { depth: "Draft!B2" } },
    page("Cut", [["hem", "=hem+Draft!B2"], ["depth", "=depth"]]),
  ],
  names: { ease: "Measure!B2", waist_over: "Draft!B1", hem: "Draft!B3", figures: "Draft!B1:B3" },
}; // biome-ignore format: pages

const figures = (book: Book, title: string) => {
  const engine = new Engine(book, layDesk);
  const at = book.pages.findIndex((one) => one.title === title);
  const list = book.pages[at]!.rows.map((_, row) => engine.value({ page: at, row, column: 1 }));
  engine.destroy();
  return list;
};

test("a page copied for another wearer works with its own cells, and no other page changes its answers", () => {
  const copied = copyPage(BOOK, 1, "The widow");
  expect(copied.pages.map(({ title }) => title)).toEqual(["Measure", "Draft", "The widow", "Cut"]);
  expect(copied.pages[2]).toEqual({
    ...BOOK.pages[1],
    title: "The widow",
    rows: [["waist", "=Measure!B1+ease"], ["depth", "9"], ["hem", "=waist_over*2+depth"], ["all", "=SUM(figures)+'The widow'!B2"]],
    names: { waist_over: "'The widow'!B1", hem: "'The widow'!B3", figures: "'The widow'!B1:B3", depth: "'The widow'!B2" },
  }); // biome-ignore format: rows
  // The only depth is no longer the only one, so the page that used it says whose.
  expect(copied.pages[3]!.rows).toEqual([["hem", "=hem+Draft!B2"], ["depth", "=Draft!depth"]]); // biome-ignore format: rows
  expect(copied.names).toEqual(BOOK.names);
  for (const title of ["Draft", "Cut"]) expect(figures(copied, title), title).toEqual(figures(BOOK, title));
  expect(figures(copied, "The widow")).toEqual(figures(BOOK, "Draft"));
  // What is changed on the copy is seen on the copy alone.
  const deeper = edit.type(copied, [{ page: 2, row: 1, column: 1, typed: "12" }]);
  expect(figures(deeper, "The widow")).toEqual([28, 12, 68, 120]);
  expect(figures(deeper, "Draft")).toEqual(figures(BOOK, "Draft"));
  expect(readBook(writeBook(copied))).toEqual({ book: copied });
  // A copy of the copy is one more.
  expect(figures(copyPage(deeper, 2, "The maid"), "The maid")).toEqual([28, 12, 68, 120]);
});

test("a copy is one step, and a page that is not there or a title that is taken is one sentence", () => {
  const store = new Store(BOOK, layDesk);
  expect(store.run(copyCommand(1, "Cut"))).toBe('there is already a page called "Cut"');
  expect(store.run(copyCommand(7, "Widow"))).toBe("there is no such page to copy");
  expect(store.run(copyCommand(1, "Widow"))).toBeNull();
  expect(store.undoable).toBe("copy a page as Widow");
  store.undo();
  expect(store.book).toEqual(BOOK);
  store.engine.destroy();
});
