import { HyperFormula } from "hyperformula";
import { afterEach, describe, expect, test, vi } from "vitest";
import * as edit from "../../../src/book/edit.ts";
import { nameCell } from "../../../src/book/naming.ts";
import { type Book, blankBook } from "../../../src/book/shape.ts";
import { changedCells } from "../../../src/engine/changes.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { changeUnit } from "../../../src/store/change-unit.ts";
import { changeColumn, pasteBlock, renamePage, typeCells } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const blank = blankBook("Withy Green", "in", "1/8");
const at = (page: number, row: number, column: number) => ({ page, row, column });
const block = (rows: number, add = 0): string[][] =>
  Array.from({ length: rows }, (_, r) => [String(r + add), `${r % 50} 1/2`, `=A${r + 1}*2`]);

afterEach(() => vi.restoreAllMocks());

/** What the engine is asked to do: cells set one by one, books built, and batches with a history of their own. */
function counted() {
  const one = vi.spyOn(HyperFormula.prototype, "setCellContents");
  const batch = vi.spyOn(HyperFormula.prototype, "batch");
  const build = vi.spyOn(HyperFormula, "buildFromSheets");
  return (act: () => void) => {
    for (const spy of [one, batch, build]) spy.mockClear();
    act();
    expect(batch).not.toHaveBeenCalled();
    return { set: one.mock.calls.length, built: build.mock.calls.length };
  };
}

describe("the engine's work", () => {
  test("for a large paste, its undo and redo, another unit and another book is one build", () => {
    const store = new Store(blank, layDesk);
    const count = counted();
    const anew = { set: 0, built: 1 };
    expect(count(() => store.run(pasteBlock(at(0, 0, 0), block(1000))))).toEqual(anew);
    expect(store.engine.value(at(0, 999, 2))).toBe(1998);
    expect(count(() => store.undo())).toEqual(anew);
    expect(store.engine.value(at(0, 999, 2))).toBeNull();
    expect(count(() => store.redo())).toEqual(anew);
    expect(count(() => store.run(changeUnit("cm")))).toEqual(anew);
    expect(count(() => store.run(renamePage(0, "Figures")))).toEqual(anew);
    const like = edit.type(blank, [{ ...at(1, 0, 1), typed: "7" }]);
    expect(count(() => store.open(like))).toEqual(anew);
    expect(store.engine.value(at(1, 0, 1))).toBe(7);
  });

  test("for less than half of the book is a change for each cell, and never a batch with a history", () => {
    const store = new Store(blank, layDesk);
    store.run(pasteBlock(at(0, 0, 0), block(2000)));
    const count = counted();
    expect(count(() => store.run(typeCells([{ ...at(0, 3, 0), typed: "1" }])))).toEqual({ set: 1, built: 0 });
    expect(count(() => store.run(pasteBlock(at(0, 0, 0), block(600, 7))))).toEqual({ set: 600, built: 0 });
    expect(store.engine.value(at(0, 599, 2))).toBe(1212);
    expect(count(() => store.undo())).toEqual({ set: 600, built: 0 });
    expect(count(() => store.run(pasteBlock(at(0, 0, 3), [["1", "2"]])))).toEqual({ set: 2, built: 0 });
    expect(count(() => store.run(changeColumn(0, 0, { width: 90 })))).toEqual({ set: 0, built: 0 });
    expect(count(() => store.run(changeColumn(0, 3, { kind: "text" })))).toEqual({ set: 1, built: 0 });
  });
});

describe("the cells that changed", () => {
  const rows = (typed: readonly (readonly string[])[]): Book => ({
    ...blank,
    pages: [{ ...blank.pages[0]!, rows: typed }, ...blank.pages.slice(1)],
  });

  test("are those whose text differs, blanked ones too", () => {
    expect(changedCells(rows([["a", "b"], ["c"]]), rows([["a", "x"], [], ["", "y"]]))).toEqual([
      { ...at(0, 0, 1), typed: "x" },
      { ...at(0, 1, 0), typed: "" },
      { ...at(0, 2, 1), typed: "y" },
    ]);
  });

  test("are none when only a title, a width, a name or a note is another", () => {
    const noted = edit.noteCell(nameCell(blank, at(0, 0, 0), "hem"), 0, "A1", "mind");
    expect(changedCells(blank, edit.changeColumn({ ...noted, title: "x" }, 0, 0, { width: 50 }))).toEqual([]);
    expect(changedCells(rows([["a"]]), edit.widen(rows([["a"]]), 0, 9))).toEqual([]);
  });

  test("are not told one by one when a page came, went or has another title", () => {
    expect(changedCells(blank, edit.addPage(blank, { ...blank.pages[0]!, title: "More" }))).toBeNull();
    expect(changedCells(blank, edit.removePage(blank, 2))).toBeNull();
    expect(changedCells(blank, edit.renamePage(blank, 0, "Figures"))).toBeNull();
    expect(changedCells(blank, { ...blank, decimal: "comma" })).toBeNull();
  });
});
