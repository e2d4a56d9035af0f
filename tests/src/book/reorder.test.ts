import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as edit from "../../../src/book/edit.ts";
import { moveColumns, movedLine, movedRange, movePage, moveRows } from "../../../src/book/reorder.ts";
import type { Book, Column } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { layDesk } from "../../../src/lay/desk.ts";
import { cellReference, rowsOf, TITLES } from "./books.ts";
import { any, base, bookOf, DRAFT, typed } from "./typed-books.ts";

const seed = 20_261_130;
describe("rows that are moved", () => {
  test("take formulas, names, notes, settings, trials and what is hidden along", () => {
    let one = bookOf(
      {
        A1: "waist",
        B1: "27",
        A2: "hip",
        B2: "=B1+12",
        A5: "ease",
        B5: "=B2*2",
        "Cut!A1": "=Draft!B1+Draft!B5",
      },
      {
        names: { waist: "Draft!B1", hip: "Draft!B2" },
        trials: [{ title: "deeper", cells: { "Draft!B1": "30" } }],
      },
    );
    one = edit.noteCell(one, DRAFT, "B1", "taken tight");
    const draft = {
      ...one.pages[DRAFT]!,
      cells: { B1: { decimals: 2, choices: "=A1:A2" } },
      hidden: ["1:1"],
    };
    one = { ...one, pages: one.pages.with(DRAFT, draft) };
    const next = moveRows(one, DRAFT, 0, 1, 4);
    expect(["A1", "B1", "A4", "B4", "B5"].map((at) => typed(next, at))).toEqual([
      "hip",
      "=B4+12",
      "waist",
      "27",
      "=B1*2",
    ]);
    expect(typed(next, "Cut!A1")).toBe("=Draft!B4+Draft!B5");
    expect(next.names).toEqual({ waist: "Draft!B4", hip: "Draft!B1" });
    expect(next.trials[0]!.cells).toEqual({ "Draft!B4": "30" });
    expect(next.pages[DRAFT]).toMatchObject({
      notes: { B4: "taken tight" },
      cells: { B4: { decimals: 2, choices: "=A1:A1" } },
      hidden: ["4:4"],
    });
    expect(moveRows(next, DRAFT, 3, 1, 0).pages[DRAFT]!.rows.slice(0, 2)).toEqual(
      one.pages[DRAFT]!.rows.slice(0, 2),
    );
  });

  test("stay in a range when they are moved within it, leave it when moved out, and widen it when moved in", () => {
    const one = bookOf({ C1: "=SUM(B2:B5)", C2: "=SUM(B$5:B$2)", C3: "=SUM(B:B)", C4: "=SUM(2:5)" });
    const sums = (book: Book) => ["C1", "C2"].map((at) => typed(book, at));
    expect(sums(moveRows(one, DRAFT, 4, 1, 2))).toEqual(["=SUM(B2:B5)", "=SUM(B$5:B$2)"]);
    expect(sums(moveRows(one, DRAFT, 2, 1, 9))).toEqual(["=SUM(B2:B4)", "=SUM(B$4:B$2)"]);
    expect(sums(moveRows(one, DRAFT, 8, 2, 3))).toEqual(["=SUM(B2:B7)", "=SUM(B$7:B$2)"]);
    const whole = moveRows(one, DRAFT, 1, 4, 9);
    expect(typed(whole, "C1")).toBe("=SUM(B6:B9)");
    expect(["C7", "C8"].map((at) => typed(whole, at))).toEqual(["=SUM(B:B)", "=SUM(6:9)"]);
  });

  test("a range keeps all of its lines when they still lie side by side, wherever they went", () => {
    fc.assert(
      fc.property(
        fc.nat(9), fc.nat(9), fc.nat(9), fc.integer({ min: 1, max: 4 }), fc.nat(12),
        (a, b, at, count, to) => {
          fc.pre(to <= at || to >= at + count);
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          const lines = Array.from({ length: high - low + 1 }, (_, i) => movedLine(at, count, to)(low + i));
          const [first, last] = movedRange(low, high, at, count, to);
          const stays = lines.filter((_, i) => low + i < at || low + i >= at + count);
          const together = Math.max(...lines) - Math.min(...lines) === high - low;
          const of = together || stays.length === 0 ? lines : stays;
          expect([first, last]).toEqual([Math.min(...of), Math.max(...of)]);
        },
      ),
      { seed, numRuns: 300 },
    ); // biome-ignore format: short
  });
});

test("no answer changes when rows or columns are moved, as long as formulas name single cells", () => {
  const single = fc.array(cellReference, { minLength: 1, maxLength: 2 }).map((parts) => `=${parts.join("+")}`);
  const figure = fc.integer({ min: 1, max: 99 }).map(String);
  const sheets = fc.tuple(...TITLES.map(() => rowsOf(fc.oneof(figure, figure, single))));
  fc.assert(
    fc.property(sheets, fc.nat(2), fc.boolean(), fc.nat(4), fc.integer({ min: 1, max: 2 }), fc.nat(6), (rows, index, tall, at, count, to) => {
      const pages = TITLES.map((title, i) => ({ ...base.pages[0]!, title, columns: Array(8).fill(any) as Column[], rows: rows[i]! }));
      const book: Book = { ...base, pages };
      const next = (tall ? moveRows : moveColumns)(book, index, at, count, to);
      const [before, after] = [new Engine(book, layDesk), new Engine(next, layDesk)];
      const line = to >= at && to <= at + count ? (i: number) => i : movedLine(at, count, to);
      for (const [page, cells] of rows.entries())
        for (const [row, list] of cells.entries())
          for (const column of list.keys()) {
            const here = page === index;
            const there = { page, row: here && tall ? line(row) : row, column: here && !tall ? line(column) : column };
            expect(after.view(there).shown).toBe(before.view({ page, row, column }).shown);
          }
      before.destroy();
      after.destroy();
    }),
    { seed, numRuns: 25 },
  );
}); // biome-ignore format: wide

test("columns that are moved take their headings, kinds and widths along", () => {
  const one = bookOf({ A1: "a", B1: "=A1", C1: "=SUM(A1:B1)" });
  const columns = ["A", "B", "C"].map((heading, i): Column => ({ heading, kind: "any", width: 50 + i }));
  const next = moveColumns({ ...one, pages: one.pages.with(DRAFT, { ...one.pages[DRAFT]!, columns }) }, DRAFT, 2, 1, 0);
  expect(next.pages[DRAFT]!.columns.map(({ heading, width }) => [heading, width])).toEqual([["C", 52], ["A", 50], ["B", 51]]);
  expect(["A1", "B1", "C1"].map((at) => typed(next, at))).toEqual(["=SUM(B1:C1)", "a", "=B1"]);
}); // biome-ignore format: in pairs

test("a page that is moved keeps its formulas, comes under another stage, and is moved back whole", () => {
  const one = bookOf({ B1: "=Cut!A1", "Cut!A1": "5" });
  const cut = one.pages.findIndex(({ title }) => title === "Cut");
  const next = movePage(one, cut, 0, "Measure");
  expect(next.pages[0]).toMatchObject({ title: "Cut", stage: "Measure" });
  expect(next.pages[DRAFT + 1]).toBe(one.pages[DRAFT]);
  expect(movePage(next, 0, cut + 1, "Cut")).toEqual(one);
  expect(movePage(one, cut, cut, "Cut")).toBe(one);
});
