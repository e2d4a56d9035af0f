import { describe, expect, test } from "vitest";
import { blankBook, typedAt } from "../../../src/book/shape.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { moveCells, pasteBlock, typeCells } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const blank = blankBook("Withy Green", "in", "1/8");
const at = (page: number, row: number, column: number) => ({ page, row, column });

test("a block pasted beyond the last column widens the page, and formulas that name cells out there stay", () => {
  const store = new Store(blank, layDesk);
  store.run(
    typeCells([
      { ...at(1, 0, 1), typed: "=E1*2" },
      { ...at(0, 0, 1), typed: "=SUM(Draft!D1:F1)" },
    ]),
  );
  store.run(pasteBlock(at(1, 0, 3), [["1", "7", "3"]]));
  expect(store.book.pages[1]!.columns).toHaveLength(6);
  expect(typedAt(store.book, 1, 0, 1)).toBe("=E1*2");
  expect(typedAt(store.book, 0, 0, 1)).toBe("=SUM(Draft!D1:F1)");
  expect(store.engine.value(at(1, 0, 1))).toBe(14);
  expect(store.engine.value(at(0, 0, 1))).toBe(11);
  store.undo();
  expect(store.engine.value(at(1, 0, 1))).toBe(0);
});

test("more cells than a book can be worked with are refused in a sentence, and a full book can be emptied", () => {
  const row = Array<string>(200).fill("1");
  const full = {
    ...blank,
    pages: [{ ...blank.pages[0]!, rows: Array<string[]>(5000).fill(row) }, ...blank.pages.slice(1)],
  };
  const paste = pasteBlock(at(1, 0, 0), Array<string[]>(600).fill(["1", "2"]));
  expect(paste.edit(full)).toEqual({
    refusal:
      "a book holds at most 1,000,000 cells, and this would make it 1,001,200; paste a part of it, or into a book of its own",
  });
  expect(paste.edit(blank)).not.toHaveProperty("refusal");
  expect(pasteBlock(at(0, 0, 0), Array<string[]>(600).fill(["", ""])).edit(full)).not.toHaveProperty(
    "refusal",
  );
});

describe("cells that are moved", () => {
  test("are moved as one step, and where they have no room that is said", () => {
    const store = new Store(blank, layDesk);
    store.run(
      typeCells([
        { ...at(1, 0, 1), typed: "27" },
        { ...at(1, 19, 1), typed: "=B1+1" },
      ]),
    );
    const block = { page: 1, top: 0, left: 1, bottom: 0, right: 1 };
    expect(store.run(moveCells(block, at(1, 6, 4)))).toBeNull();
    expect([typedAt(store.book, 1, 19, 1), store.engine.value(at(1, 19, 1))]).toEqual(["=E7+1", 28]);
    expect(store.book.pages[1]!.columns).toHaveLength(5);
    expect(store.undoable).toBe("move a cell to E7");
    store.undo();
    expect([typedAt(store.book, 1, 0, 1), typedAt(store.book, 1, 19, 1)]).toEqual(["27", "=B1+1"]);
    expect(store.run(moveCells({ ...block, bottom: 1 }, at(1, 19_999, 0)))).toBe(
      "a page has at most 20000 rows; these cells would end at Draft!A20001",
    );
  });
});
