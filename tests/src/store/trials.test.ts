import { expect, test } from "vitest";
import { readBook } from "../../../src/book/read.ts";
import { writeBook } from "../../../src/book/write.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { Store } from "../../../src/store/store.ts";
import { adoptTrial, deleteTrial, keepTrial } from "../../../src/store/trials.ts";
import { cell } from "../engine/ask.ts";
import { panelSkirt } from "../engine/whatif-books.ts";

const open = () => new Store(panelSkirt(), layDesk);

test("a setting is kept under a title, survives the file, is adopted as one step and undone as one", () => {
  const store = open();
  const depth = cell(store.book, "depth");
  const fullness = cell(store.book, "fullness");
  const start = store.book;
  expect(store.run(keepTrial(" an inch deeper ", [{ ...depth, typed: "31 in" }, fullness]))).toBeNull();
  expect(store.book.trials).toEqual([
    { title: "an inch deeper", cells: { "Draft!B4": "31 in", "Draft!B2": "2.5" } },
  ]);
  expect(store.book.pages).toBe(start.pages);
  expect((readBook(writeBook(store.book)) as { book: object }).book).toEqual(store.book);

  expect(store.run(adoptTrial("An Inch Deeper"))).toBeNull();
  expect(store.engine.value(cell(store.book, "cloth"))).toBe(102);
  store.undo();
  expect(store.engine.value(cell(store.book, "cloth"))).toBe(99);
  expect(store.run(deleteTrial("an inch deeper"))).toBeNull();
  expect(store.book.trials).toEqual([]);
  store.undo();
  store.undo();
  expect(store.book).toEqual(start);
});

test("a trial that can't be is refused in a sentence", () => {
  const store = open();
  const depth = cell(store.book, "depth");
  expect(store.run(keepTrial("  ", [depth]))).toBe("a trial needs a title, such as: an inch deeper");
  expect(store.run(keepTrial("As it stands", [depth]))).toBe(
    '"as it stands" means the book itself; choose another title',
  );
  expect(store.run(keepTrial("short", []))).toMatch(/^a trial needs at least one typed cell/);
  store.run(keepTrial("Short", [depth]));
  expect(store.run(keepTrial("short ", [depth]))).toMatch(/^there is already a trial called "Short"/);
  expect(store.run(adoptTrial("long"))).toBe('there is no trial called "long"');
  expect(store.run(deleteTrial("long"))).toBe('there is no trial called "long"');
});

test("a trial's cells follow rows that are put in above them", async () => {
  const { insertRows } = await import("../../../src/store/commands.ts");
  const store = open();
  store.run(keepTrial("deeper", [{ ...cell(store.book, "depth"), typed: "31 in" }]));
  store.run(insertRows(0, 1, 2));
  store.run(adoptTrial("deeper"));
  expect(store.engine.value(cell(store.book, "cloth"))).toBe(102);
});
