import { describe, expect, it, vi } from "vitest";
import { questionHash } from "../../../functions/cutting/lay-question.ts";
import type { Lay, LayQuestion } from "../../../functions/lay.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { checks } from "../../../src/engine/checks.ts";
import { isFound, keepChecked, layDesk } from "../../../src/lay/desk.ts";
import { isLarge, leaveLarge } from "../../../src/lay/large-questions.ts";
import { quickLay } from "../../../src/lay/plan.ts";
import { typeCells } from "../../../src/store/commands.ts";
import { Store } from "../../../src/store/store.ts";

const GUSSET = "M 0 0 L 14 3 L 10 12 L 2 9 Z";
const AREA = 102;

function opened() {
  const desk = vi.fn(layDesk);
  const blank = blankBook("Withy Green", "in", "1/8");
  const columns = blank.pages[0]!.columns.map((column) => ({ ...column, kind: "any" as const }));
  const rows = [
    [GUSSET, "300", "=YARDAGE(A1;B1;54)", "=C1/36", "=CLOTH_CHECK(A1;B1;54;1900)"],
    ["", "12", "=YARDAGE(A1;B2;54)"],
  ];
  const pages = blank.pages.map((page, i) => (i === 0 ? { ...page, columns, rows } : page));
  const store = new Store({ ...blank, pages }, leaveLarge(desk, isFound));
  const view = (row: number, column: number) => store.engine.view({ page: 0, row, column });
  const asked = (row: number): LayQuestion =>
    store.engine.laid().find(({ place }) => place.row === row && place.column === 2)!.lays[0]!.question;
  return { store, desk, view, asked };
}

describe("a page that must go on while its maker types", () => {
  it("lays what is quickly laid at once, and leaves 300 pieces to a worker: a cell says so and counts as no problem", () => {
    const { store, desk, view, asked } = opened();
    expect(view(1, 2).value).toBeCloseTo((quickLay(asked(1)) as Lay).lengths[0]!, 6);
    expect(view(1, 2).origin).toEqual({ by: "quick" });
    const least = (300 * AREA) / 54;
    expect(view(0, 2)).toMatchObject({ value: null, shown: "≥ 566 5/8", origin: null });
    expect(least).toBeCloseTo(566.67, 2);
    expect(view(0, 2).problem).toMatchObject({
      is: "pending",
      sentence: "the lay of 300 pieces is being worked out; by its area it takes at least 566 5/8 in",
    });
    // What rests on it waits for it; no bound passes for a figure.
    expect(view(0, 3)).toMatchObject({
      value: null,
      shown: "…",
      problem: { is: "pending", from: { column: 2 } },
    });
    expect(view(0, 4)).toMatchObject({ value: null, shown: "…", problem: { is: "pending" } });
    expect(checks(store.engine)).toEqual([]);
    // No large question came to the desk that lays at once.
    expect(desk.mock.calls.filter(([question]) => isLarge(question))).toEqual([]);
  });

  it("goes on from the lay that the worker brings, and waits again when the question changes", () => {
    const { store, view, asked } = opened();
    const question = asked(0);
    const lay = quickLay(question) as Lay;
    const long = expect.closeTo(lay.lengths[0]!, 6);
    store.keepLay(questionHash(question), keepChecked(question, { ...lay, origin: { by: "quick" } }));
    expect(view(0, 2)).toMatchObject({ value: long, problem: null, origin: { by: "quick" } });
    expect(view(0, 3).value).toBeCloseTo(lay.lengths[0]! / 36, 6);
    expect(view(0, 4)).toMatchObject({ value: "ok", problem: null });
    store.run(typeCells([{ page: 0, row: 0, column: 1, typed: "299" }]));
    expect(view(0, 2).problem).toMatchObject({ is: "pending" });
    store.undo();
    expect(view(0, 2)).toMatchObject({ value: long, problem: null });
    // Another formula in the cell is no lay any more, nor is one that does not come to its lay.
    store.run(typeCells([{ page: 0, row: 0, column: 2, typed: "=B1+1" }]));
    expect(view(0, 2)).toMatchObject({ value: 301, problem: null, origin: null });
    store.run(typeCells([{ page: 0, row: 1, column: 1, typed: "0" }]));
    expect(view(1, 2)).toMatchObject({ problem: { is: "error" }, origin: null });
  });

  it("lets no formula pass over a lay that is being worked out", () => {
    const { store, view, asked } = opened();
    const formulas = [
      "=IFERROR(YARDAGE(A1;B1;54);0)",
      "=IFERROR(C1;0)",
      "=IF(ISERROR(C1);0;C1)",
      "=COUNT(C1:C2)",
      '=SUMIF(C1:C2;">0")',
      "=IFERROR(C1/36;0)+1",
      "=IF(B2>100;YARDAGE(A1;B1;54);7)",
      "=IFERROR(7;C1)",
      "=IFERROR(1/0;8)",
    ];
    store.run(typeCells(formulas.map((typed, i) => ({ page: 0, row: 3 + i, column: 0, typed }))));
    for (const [i, formula] of formulas.slice(0, 6).entries())
      expect(view(3 + i, 0), formula).toMatchObject({ value: null, problem: { is: "pending" } });
    expect([6, 7, 8].map((i) => view(3 + i, 0))).toMatchObject(
      [7, 7, 8].map((value) => ({ value, problem: null, origin: null })),
    );
    expect(checks(store.engine)).toEqual([]);
    const question = asked(0);
    const lay = quickLay(question) as Lay;
    const long = lay.lengths[0]!;
    store.keepLay(questionHash(question), keepChecked(question, { ...lay, origin: { by: "quick" } }));
    const values = formulas.slice(0, 6).map((_, i) => view(3 + i, 0).value);
    const both = long + Number(view(1, 2).value);
    const close = [long, long, long, 2, both, long / 36 + 1].map((value) => expect.closeTo(value, 6));
    expect(values).toEqual(close);
  });

  it("says at once what can never be laid", () => {
    const { store, view } = opened();
    store.run(typeCells([{ page: 0, row: 0, column: 2, typed: "=YARDAGE(A1;B1;8)" }]));
    expect(view(0, 2).problem).toMatchObject({ is: "error" });
  });
});
