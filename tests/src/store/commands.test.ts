import { expect, test } from "vitest";
import { blankBook, typedAt } from "../../../src/book/shape.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { pasteBlock, typeCells } from "../../../src/store/commands.ts";
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
