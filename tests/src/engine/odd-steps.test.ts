import { expect, test } from "vitest";
import { oddSteps } from "../../../src/engine/odd-steps.ts";
import { settingsOf, sweep, sweepCsv } from "../../../src/engine/sweep.ts";
import { questionEngineOf, watch } from "./ask.ts";
import { bookOf } from "./whatif-books.ts";

const cuffs = bookOf({
  depth: "4 in",
  wrist: "6 1/2 in",
  cuff: "=CUFF(wrist;depth)",
  around: "=PIECE_WIDTH(cuff)",
  other: "=CUFF(2;7)",
});

const swept = (...lists: number[][]) => {
  const varied = ["depth", "wrist"].slice(0, lists.length);
  const engine = questionEngineOf(cuffs, varied, ["around"]);
  return { engine, rows: [...sweep(engine, settingsOf(lists) as number[][])] };
};

test("a sweep names the steps at which a cuff becomes deeper than the wrist is round", () => {
  const { engine, rows } = swept([5, 6, 7, 8, 5]);
  expect(rows.map(({ odd }) => odd?.map(({ label }) => label))).toEqual([
    undefined,
    undefined,
    ["cuff"],
    ["cuff"],
    undefined,
  ]);
  expect(rows[2]!.odd![0]!.sentence).toContain("the depth 7 in");
  expect(rows[3]!.odd![0]!.sentence).toContain("the depth 8 in");
  expect(oddSteps(engine, rows)).toEqual([
    expect.stringMatching(/^at depth 7 to 8: cuff: CUFF: the depth 7 in/),
  ]);
});

test("steps apart from each other, every step, and steps of two cells are named as such", () => {
  const apart = swept([7, 5, 8]);
  expect(oddSteps(apart.engine, apart.rows)).toEqual([
    expect.stringMatching(/^at depth 7, and depth 8: cuff: /),
  ]);
  const all = swept([7, 8]);
  expect(oddSteps(all.engine, all.rows)).toEqual([expect.stringMatching(/^at every step: cuff: /)]);
  const two = swept([5, 7], [6, 6.5, 8]);
  expect(oddSteps(two.engine, two.rows)).toEqual([
    expect.stringMatching(/^at 2 of 6 steps, the first depth 7 and wrist 6: cuff: /),
  ]);
});

test("the table for other programs says at which steps a cell is unusual", () => {
  const { engine, rows } = swept([6, 7]);
  const lines = sweepCsv(engine, [watch(cuffs, "around")], rows)
    .trim()
    .split(/\r?\n/);
  expect(lines[0]).toBe("depth,around,check");
  expect(lines[1]).toMatch(/,$/);
  expect(lines[2]).toMatch(/cuff: CUFF: the depth 7 in/);
});
