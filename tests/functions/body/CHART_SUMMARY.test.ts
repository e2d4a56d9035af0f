import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { CHART_SUMMARY } from "../../../functions/body/CHART_SUMMARY.ts";
import { WEARER_CHECK } from "../../../functions/body/WEARER_CHECK.ts";
import type { Cell } from "../../../functions/define.ts";
import { type Argument, run } from "../../../functions/run.ts";

const TODAY = 46_160;
const chart = asBlock(
  [
    ...["Wearer", "Worn beneath", "Taken on", "Waist girth", "Hip girth"],
    ...["the widow", "shift", 46_146, 76, 100],
    ...["The Widow", "shift, stays", 46_146, 72, 100],
    ...["the cook", "shift", 46_146, 90, 110],
    ...["the cook", "shift, petticoat", 46_146, 80, 112],
    ...["the fool", "shirt", 46_000, 80, 95],
    ...["the fool", "shirt, coat", null, null, null],
    ...["the page", "shirt", 46_146, 70, null],
    ...[null, null, null, null, null],
  ] as Cell[],
  5,
  [],
);
const ask = (...args: Argument[]) => run(CHART_SUMMARY, [chart, ...args], { unit: "cm" });

// By hand: the cook's waist shrinks under a petticoat; the fool has a row without figures, and his others are old.
test("each wearer of a chart counts once, the unmeasured before the doubtful", () => {
  expect(ask("all", TODAY)).toBe("4 wearers: 2 ok; unmeasured: the fool; doubtful: the cook");
  expect(ask("unmeasured", TODAY)).toBe("the fool");
  expect(ask("ok", TODAY)).toBe("the widow, the page");
  expect(ask("doubtful", TODAY, null, "waist girth, hip girth")).toBe("the cook, the page");
  // 300 days on, every figure is too old.
  expect(ask("ok", TODAY + 300)).toBe("nobody");
});

test("a wearer is ok where WEARER_CHECK says so of all rows, and nowhere else", () => {
  const ok = String(ask("ok", TODAY)).split(", ");
  for (const wearer of ["the widow", "the cook", "the fool", "the page"])
    expect(run(WEARER_CHECK, [chart, wearer, null, TODAY], { unit: "cm" }) === "ok", wearer).toBe(
      ok.includes(wearer),
    );
});

test("a figure of one row that is mended clears the other row of the same wearer", () => {
  const changed = (cell: number, figure: number) => asBlock(chart.with(cell, figure), chart.wide, []);
  const doubtful = (block: typeof chart) => run(CHART_SUMMARY, [block, "doubtful", TODAY], { unit: "cm" });
  expect(doubtful(chart)).toBe("the cook");
  // The waist over the shift: no longer above the one over the petticoat, whose row stays as it is.
  expect(doubtful(changed(18, 78))).toBe("nobody");
  expect(doubtful(changed(18, 90))).toBe("the cook");
  // A figure of another wearer leaves the cook as she is.
  expect(doubtful(changed(8, 130))).toBe("the widow, the cook");
});

test("of a great company some wearers are named in the line of all, and the others counted", () => {
  const rows = Array.from({ length: 50 }, (_, i) => [`dancer ${i + 1}`, "shift", null]);
  const great = asBlock(["Wearer", "Worn beneath", "Waist girth", ...rows.flat()] as Cell[], 3, []);
  const line = run(CHART_SUMMARY, [great, "all", TODAY], { unit: "cm" });
  expect(line).toMatch(/^50 wearers: 0 ok; unmeasured: dancer 1, .*, dancer 20, 30 more; doubtful: nobody$/);
  expect(run(CHART_SUMMARY, [great, "unmeasured", TODAY], { unit: "cm" })).toContain("dancer 50");
});
