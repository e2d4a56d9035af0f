import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { MEASURE_OF } from "../../../functions/body/MEASURE_OF.ts";
import type { Cell } from "../../../functions/define.ts";
import { run } from "../../../functions/run.ts";
import { calls } from "../calls.ts";

const HEADS: readonly Cell[] = [
  "Wearer",
  "Worn beneath",
  "Taken on",
  "Waist girth",
  "Hip girth",
  "Waist to floor, side",
];
const WIDOW: readonly Cell[] = ["the widow", "shift", 46_146, 29, 39.5, 41];
const LACED: readonly Cell[] = ["the widow", "stays & shift", 46_146, 26.5, null, null];
const MILLER: readonly Cell[] = ["the miller", "shirt", 46_146, 38, "41 ?", "-"];
const chart = (...rows: (readonly Cell[])[]) => asBlock(rows.flat(), rows[0]!.length, []);
const CHART = chart(HEADS, WIDOW, LACED, MILLER);
const { answer, refusal } = calls(MEASURE_OF, "in");
const at = (...args: Parameters<typeof run>[1]) => {
  const found = run(MEASURE_OF, args, { unit: "in" });
  return typeof found === "object" ? found.at : undefined;
};

test("a figure is found by wearer, measurement and layers, however each is written", () => {
  expect(answer(CHART, "The Widow ", "waist girth", "shift, stays")).toBe(26.5);
  expect(answer(CHART, "the widow", "WAIST", "the shift only")).toBe(29);
  expect(answer(CHART, "the widow", "waist to floor, side")).toBe(41);
  expect(answer(CHART, "the widow", "hip girth")).toBe(39.5);
  // The columns stand in any order, and a page's headings serve as well.
  const turned = [HEADS, WIDOW, LACED].map((row) => row.toReversed());
  expect(answer(chart(...turned), "the widow", "waist girth", "stays, shift")).toBe(26.5);
  expect(answer(asBlock(WIDOW, 6, HEADS.map(String)), "the widow", "waist girth")).toBe(29);
});

test("what is not there is refused by name, with the nearest", () => {
  expect(refusal(CHART, "the wido", "waist girth")).toBe(
    'the chart has no wearer called "the wido"; is "the widow" meant?',
  );
  expect(refusal(CHART, "the widow", "waist girht")).toBe('the chart has no column "waist girht"; is "waist girth" meant?');
  expect(refusal(CHART, "the widow", "waist girth", "petticoat")).toBe(
    "the chart has no row of the widow over petticoat, only over shift; over stays and shift",
  );
  // It points at the wearer's first row, so that all figures that want the missing one are one problem.
  expect(at(CHART, "the widow", "waist girth", "petticoat")).toEqual({ position: 0, cell: 6 });
  expect(refusal(CHART, "the widow", "hip girth", "shift, stays")).toBe(
    "the hip girth of the widow over stays and shift was never taken, only of the widow over shift",
  );
  expect(refusal(CHART, "the widow", "waist girth")).toBe(
    "the waist girth was taken of the widow over shift, and of the widow over stays and shift: say in beneath which is meant",
  );
  expect(refusal(CHART, "the miller", "waist to floor, side")).toBe(
    "the waist to floor, side of the miller over shirt was never taken",
  );
  expect(refusal(CHART, "the miller", "hip girth")).toBe(
    'the hip girth of the miller over shirt must be a length, not "41 ?"',
  );
  expect(refusal(CHART, null, "hip girth")).toBe("wearer is empty: choose whose measurement is meant");
}); // biome-ignore format: sentences

test("the refusal leads to the cell of the chart", () => {
  expect(at(CHART, "the widow", "hip girth", "shift, stays")).toEqual({ position: 0, cell: 2 * 6 + 4 });
  expect(at(CHART, "the miller", "hip girth")).toEqual({ position: 0, cell: 3 * 6 + 4 });
  expect(at(asBlock(MILLER, 6, HEADS.map(String)), "the miller", "hip girth")).toEqual({
    position: 0,
    cell: 4,
  });
});

test("two wearers of one name, and a chart that is none, are one sentence each", () => {
  const twice = chart(HEADS, WIDOW, MILLER, ["The miller", "shirt", null, 36, 40, null]);
  expect(refusal(twice, "the miller", "waist girth", "shirt")).toBe(
    "two rows are of The miller over shirt: where they are two people, give them different names; else delete the older row",
  );
  expect(at(twice, "the miller", "waist girth", "shirt")).toEqual({ position: 0, cell: 18 });
  expect(refusal(chart(WIDOW), "the widow", "waist girth")).toBe(
    'the chart has no headings that are known here: write "wearer", "worn beneath" and the names of the measurements over its columns',
  );
  expect(refusal(chart(["Wearer", "Waist girht"], ["x", 3]), "x", "waist girth")).toBe(
    'the chart has a column headed "waist girht"; is "waist girth" meant?',
  );
  expect(at(chart(["Wearer", "Waist girht"], ["x", 3]), "x", "waist girth")).toEqual({
    position: 0,
    cell: 1,
  });
  expect(refusal(chart(["waist", "hip"], [30, 40]), "x", "waist")).toBe(
    'the chart has no column "wearer": give that heading to the column with the names',
  );
  expect(refusal(chart(["wearer", "waist", "waist girth"], ["x", 30, 40]), "x", "waist")).toBe(
    'the chart has two columns of one measurement, "waist" and "waist girth": keep one',
  );
  expect(refusal(30, "x", "waist")).toBe("chart must be a block of cells with headings, not one cell");
});
