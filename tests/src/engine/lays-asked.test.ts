import { describe, expect, it } from "vitest";
import { questionHash } from "../../../functions/cutting/lay-question.ts";
import { blankBook } from "../../../src/book/shape.ts";
import { Engine } from "../../../src/engine/engine.ts";
import { laysAsked } from "../../../src/engine/lays-asked.ts";
import { layDesk } from "../../../src/lay/desk.ts";

const PANEL = "M 0 0 L 27 0 L 27 40 L 0 40 Z";

function asked(formula: string, row = 1) {
  const blank = blankBook("Withy Green", "in", "1/8");
  const rows = [
    ["widow's skirt", PANEL, "3"],
    ["", formula],
    ["", "=B2+1"],
    ["apron", "M 0 0 L 20 0 L 20 30 L 0 30 Z", "1"],
  ];
  const columns = blank.pages[0]!.columns.map((column) => ({ ...column, kind: "any" as const }));
  const book = {
    ...blank,
    pages: blank.pages.map((page, i) => (i === 0 ? { ...page, columns, rows } : page)),
  };
  return laysAsked(new Engine(book, layDesk), { page: 0, row, column: 1 });
}

describe("the lay question of a cell", () => {
  it("has the pieces with their names, the cloth and the turns that the formula gives", () => {
    const [one, ...others] = asked("=YARDAGE(B1;C1;54;;;;;;A1)");
    expect(others).toEqual([]);
    expect(one!.by).toBe("YARDAGE");
    expect(one!.question.pieces.map(({ name, quantity, turns }) => [name, quantity, turns])).toEqual([
      ["widow's skirt", 3, [0, 180]],
    ]);
    expect(one!.question.cloths).toEqual([{ name: "cloth", width: 54, length: null }]);
    expect(one!.hash).toBe(questionHash(one!.question));
  });

  it("is found inside a longer formula, and asked once though two functions ask it", () => {
    const both = asked("=ROUNDUP(YARDAGE(B1;C1;54)/36;2)+LAY_DENSITY(B1;C1;54)");
    expect(both.map(({ by }) => by)).toEqual(["YARDAGE"]);
  });

  it("is the cloth in hand first, then such cloth without an end, for a check of cloth that falls short", () => {
    const lays = asked("=CLOTH_CHECK(B1;C1;54;60)");
    expect(lays.map(({ question }) => question.cloths[0]!.length)).toEqual([60, null]);
  });

  it("is of pieces that are shared out those cut from the stock, with nothing missing, then those cut from cloth to buy", () => {
    const stock = '"Cloth";"Usable width";"Length"|"linen";30;45';
    const lays = asked(`=CLOTH_TO_BUY(B1;C1;{${stock}};"linen";54)`);
    expect(lays.map(({ question: { cloths, pieces } }) => [cloths[0]!.length, pieces[0]!.quantity])).toEqual([
      [45, 1],
      [null, 2],
    ]);
  });

  it("is none for a cell that lays nothing, or only rests on one that does", () => {
    expect(asked("=YARDAGE(B1;C1;54)", 2)).toEqual([]);
    expect(asked("=2*3")).toEqual([]);
    expect(asked("plain text")).toEqual([]);
  });

  it("is none while the formula can not be worked", () => {
    expect(asked("=YARDAGE(B1;C1;nothing_named)")).toEqual([]);
    expect(asked("=YARDAGE(B1;0;54)")).toEqual([]);
  });
});
