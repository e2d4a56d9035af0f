import { describe, expect, test } from "vitest";
import * as edit from "../../../src/book/edit.ts";
import type { Book } from "../../../src/book/shape.ts";
import { sortedRows, sortOrder } from "../../../src/book/sort.ts";
import { block, bookOf, DRAFT, typed } from "./typed-books.ts";

const sorted = (book: Book, from: string, to: string, order: readonly number[]): Book => {
  const next = sortedRows(book, block(from, to), order);
  if ("refusal" in next) throw new Error(next.refusal);
  return next;
};
const refusal = (book: Book, from: string, to: string, order: readonly number[]) => {
  const next = sortedRows(book, block(from, to), order);
  return "refusal" in next ? next.refusal : "no refusal: it was sorted";
};

describe("the rows of a block that are sorted", () => {
  const list = {
    A2: "skirt",
    B2: "2",
    C2: "=B2*10",
    A3: "band",
    B3: "1",
    C3: "=B3*10",
    A4: "cuff",
    B4: "4",
    C4: "=B4*10",
  };

  test("move as wholes; formulas, names, notes and references from elsewhere follow their row", () => {
    const one = edit.noteCell(
      bookOf({ ...list, D9: "=C2", E9: "=SUM(C2:C4)", "Cut!A1": "=Draft!B$4" }, { names: { cuff: "Draft!C4" } }),
      DRAFT, "A2", "two of it",
    );
    const next = sorted(one, "A2", "C4", [1, 2, 0]);
    expect(next.pages[DRAFT]!.rows.slice(1, 4)).toEqual([["band", "1", "=B2*10"], ["cuff", "4", "=B3*10"], ["skirt", "2", "=B4*10"]]);
    expect(["D9", "E9", "Cut!A1"].map((at) => typed(next, at))).toEqual(["=C4", "=SUM(C2:C4)", "=Draft!B$3"]);
    expect([next.names, next.pages[DRAFT]!.notes]).toEqual([{ cuff: "Draft!C3" }, { A4: "two of it" }]);
  }); // biome-ignore format: in pairs

  test("keep what lies outside the block where it is, and formulas of the block go on using it", () => {
    const one = bookOf({ ...list, C2: "=B2*F$1", C3: "=B3*F$1", C4: "=B4*F1", F1: "3" });
    const next = sorted(one, "A2", "C4", [2, 0, 1]);
    expect(["C2", "C3", "C4", "F1"].map((at) => typed(next, at))).toEqual([
      "=B2*F1",
      "=B3*F$1",
      "=B4*F$1",
      "3",
    ]);
  });

  test("are refused where formulas use other rows of the block, or only a part of it", () => {
    expect(refusal(bookOf({ ...list, C3: "=C2+B3" }), "A2", "C4", [1, 0, 2])).toBe(
      "Draft!C3 uses C2, another row of this block; sorted, it would use a row that is no longer its neighbour. Put the formula's answer below the block, or sort without this column",
    );
    expect(refusal(bookOf({ ...list, D9: "=SUM(B2:B3)" }), "A2", "C4", [0, 2, 1])).toBe(
      "Draft!D9 uses B2:B3, only some of the rows of this block, and sorted they would no longer stand together; make the formula use them all",
    );
    expect(refusal(bookOf({ ...list, D3: "=B3" }), "A2", "C4", [1, 0, 2])).toBe(
      "Draft!D3 uses B3 of its own row and stands outside this block; select a block that holds both, so that the row stays together",
    );
    expect(refusal(bookOf(list), "B2", "C4", [1, 0, 2])).toBe("no refusal: it was sorted");
    expect(refusal(bookOf(list), "C2", "C4", [1, 0, 2])).toBe(
      "Draft!C2 uses B2, which stands in its row but outside this block; select a block that holds both, so that the row stays together",
    );
    expect(refusal(bookOf({ ...list, D9: "=SUM(C2:D3)" }), "A2", "C4", [1, 0, 2])).toMatch(/only a part is in this block/);
    const hidden = bookOf(list);
    const page = { ...hidden.pages[DRAFT]!, hidden: ["3:3"] };
    expect(refusal({ ...hidden, pages: hidden.pages.with(DRAFT, page) }, "A2", "C4", [1, 0, 2])).toMatch(/^row 3 of this block is hidden/);
  }); // biome-ignore format: wide

  test("stand figures before texts, and blanks last either way", () => {
    const values = ["row 10", 3, null, "Row 2", 1, true, ""];
    expect(sortOrder(values, false)).toEqual([4, 1, 3, 0, 5, 2, 6]);
    expect(sortOrder(values, true)).toEqual([5, 0, 3, 1, 4, 2, 6]);
    expect(sortOrder([2, 1, 2, 1], true)).toEqual([0, 2, 1, 3]);
  });
});
