import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { WEARER_CHECK } from "../../../functions/body/WEARER_CHECK.ts";
import type { Cell } from "../../../functions/define.ts";
import { type Argument, run } from "../../../functions/run.ts";

const HEADS = [
  "Wearer",
  "Worn beneath",
  "Taken on",
  "Stature",
  "Cervical height",
  "Waist height",
  "Hip height",
  "Bust girth",
  "Waist girth",
  "Hip girth",
  "Laced",
];
const WIDOW: readonly Cell[] = ["the widow", "shift", 46_146, 165, 141.5, 99, 84.5, 94, 76, 100, null];
const TODAY = 46_160;
const chart = (...rows: (readonly Cell[])[]) => asBlock([HEADS, ...rows].flat(), HEADS.length, []);
/** The verdict, and the row and the heading of each cell it is about. */
const checked = (block: Argument, ...args: Argument[]) => {
  const at: string[] = [];
  const points = ({ cell }: { cell: number }) =>
    at.push(`${Math.floor(cell / HEADS.length)} ${HEADS[cell % HEADS.length]}`);
  const answer = run(WEARER_CHECK, [block, ...args], { unit: "cm", points });
  return [typeof answer === "object" ? answer.refusal : answer, at] as const;
};
const changed = (heading: string, value: Cell, row = WIDOW) => row.with(HEADS.indexOf(heading), value);

test("figures that fit are ok, and a blank wearer has nothing to say", () => {
  expect(checked(chart(WIDOW), "the widow", "shift", TODAY)).toEqual(["ok", []]);
  expect(checked(chart(WIDOW, WIDOW.map(() => null)), null, null, TODAY)).toEqual(["", []]);
  const nobody = chart(WIDOW, changed("Wearer", null));
  expect(checked(nobody, "", "", TODAY)).toEqual(["check: doubtful: a row has figures and no wearer: write whose they are", ["2 Wearer"]]);
}); // biome-ignore format: sentences

test("one slip is reported once, at the figure to blame, although others no longer fit beside it", () => {
  // The pair that MEASURE_CHECK's published check swaps: in all 6068 people of the survey the hip stood below the waist.
  const swapped = changed("Hip height", 99, changed("Waist height", 84.5));
  const [verdict, at] = checked(chart(swapped), "the widow", "shift", TODAY);
  expect(verdict).toMatch(/^check: doubtful: the widow over shift: .*may be swapped, for both would fit the other way round; please measure again$/);
  expect(at.toSorted()).toEqual(["1 Hip height", "1 Waist height"]);
  const inches = checked(chart(changed("Waist girth", 30)), "the widow", "shift", TODAY);
  expect(inches[0]).toMatch(/waist girth of 30 cm is .*inches may have been written where centimetres were meant/);
  expect(inches[1]).toEqual(["1 Waist girth"]);
}); // biome-ignore format: sentences

const CHILD: readonly Cell[] = ["the orphan", "shift", 46_146, 120, 98, 72, 58, 62, 56, 66, null];
const childChecked = (row: readonly Cell[], ...more: (readonly Cell[])[]) =>
  checked(
    asBlock(
      [
        [...HEADS.with(10, "Compare with")],
        row.with(10, "child"),
        ...more.map((one) => one.with(10, "child")),
      ].flat(),
      HEADS.length,
      [],
    ),
    "the orphan",
  );

test("a child is compared with itself, not with soldiers: each figure by the shares of an adult's", () => {
  // A body of seven years and one of a year, by common charts of children's sizes: about 120 and 75 cm tall.
  expect(childChecked(CHILD)).toEqual(["ok", []]);
  expect(childChecked(["the orphan", "shift", 46_146, 75, 60, 42, 33, 48, 47, 48, null])).toEqual(["ok", []]);
  const [inches, at] = childChecked(changed("Waist girth", 22, CHILD));
  expect(inches).toMatch(/^check: doubtful: the orphan over shift: waist girth of 22 cm is far too small beside the child's 6 other measurements, which lead to about \d+(\.\d)? cm; inches may have been written where centimetres were meant: 2.54 times as much would fit; please measure again$/);
  expect(at).toEqual(["1 Waist girth"]);
  const [slipped] = childChecked(changed("Bust girth", 6.2, CHILD));
  expect(slipped).toMatch(/bust girth of 6.2 cm is far below that of any body, a child's too: measure again, and check the unit$/);
  const [order, both] = childChecked(changed("Cervical height", 125, CHILD));
  expect(order).toMatch(/cervical height is less than stature in every body, but here they are 125 cm and 120 cm; please measure again$/);
  expect(both.toSorted()).toEqual(["1 Cervical height", "1 Stature"]);
}); // biome-ignore format: sentences

test("a figure that no body has is said, whoever it is and whatever is worn, and nothing else is blamed for it", () => {
  const far = (row: readonly Cell[], heading: string, figure: number) => childChecked(changed(heading, figure, row));
  for (const heading of HEADS.slice(3, 10)) {
    expect(far(CHILD, heading, 1e9), heading).toEqual([
      `check: doubtful: the orphan over shift: ${heading.toLowerCase()} of 1000000000 cm is far above that of any body: measure again, and check the unit`, [`1 ${heading}`]]);
    const [widow, at] = checked(chart(changed(heading, 1e9)), "the widow");
    expect(widow).toMatch(/of 1000000000 cm is far above that of any body/);
    expect(at).toEqual([`1 ${heading}`]);
    // Over stays and a pad no figure is compared with the survey.
    const [padded] = checked(chart(changed(heading, 1e9).with(1, "shift, stays, hip pad")), "the widow");
    expect(padded).toMatch(/of 1000000000 cm is far above that of any body/);
  }
  // A measurement that the survey does not have, and a column that is no measurement.
  const heads = ["Wearer", "Worn beneath", "Point to point", "Telephone"];
  const other = (point: number) => run(WEARER_CHECK, [asBlock([...heads, "the widow", "shift", point, 5_550_123_456], 4, []), "the widow"], { unit: "cm" });
  expect(other(19)).toBe("ok");
  expect(other(1900)).toMatch(/point to point of 1900 cm is far above that of any body/);
  // A skirt's girth over hoops.
  expect(checked(chart(changed("Hip girth", 300).with(1, "shift, hoops")), "the widow")[0]).toBe("ok");
}); // biome-ignore format: sentences

test("a role with no measurements, missing ones, and texts that are no lengths", () => {
  const fool = ["the fool", "shirt", ...HEADS.slice(2).map(() => null)];
  expect(checked(chart(WIDOW, fool), "the fool", "shirt", TODAY)).toEqual(["check: unmeasured: the row of the fool over shirt has no figure", ["2 Wearer"]]);
  expect(checked(chart(changed("Hip girth", "")), "the widow", null, TODAY, 90, "waist girth, hip")).toEqual([
    "check: missing: the hip girth of the widow over shift was never taken: measure it", ["1 Hip girth"]]);
  expect(checked(chart(changed("Hip girth", "39 ?")), "the widow")).toEqual([
    'check: doubtful: the hip girth of the widow over shift must be a length, not "39 ?"', ["1 Hip girth"]]);
  // The whole wearer has a measurement that one of her rows has; one row is asked by itself.
  const laced = ["the widow", "shift, stays", 46_146, null, null, null, null, null, 68, null, null];
  const both = chart(WIDOW, laced);
  expect(checked(both, "the widow", null, TODAY, 90, "stature, waist girth")).toEqual(["ok", []]);
  expect(checked(both, "the widow", "shift, stays", TODAY, 90, "stature")).toEqual([
    "check: missing: the stature of the widow over shift and stays was never taken: measure it", ["2 Stature"]]);
  expect(checked(chart(WIDOW), "the fool")[0]).toBe('the chart has no wearer called "the fool": measure them, and give them a row');
}); // biome-ignore format: sentences

test("dates that are missing, old or still to come lead to the date", () => {
  const dated = (day: Cell) => checked(chart(changed("Taken on", day)), "the widow", "shift", TODAY, 30);
  expect(dated(46_130)).toEqual(["ok", []]);
  expect(dated(46_129)).toEqual(["check: too old: the figures of the widow over shift were taken 31 days ago, 30 are allowed: measure again before cutting", ["1 Taken on"]]);
  expect(dated(46_161)).toEqual(["check: doubtful: the figures of the widow over shift are dated 2026-05-19, which is still to come: check the date", ["1 Taken on"]]);
  expect(dated(null)).toEqual(["check: missing: no date says when the widow over shift was measured: write it, or measure again", ["1 Taken on"]]);
  expect(checked(chart(changed("Taken on", null)), "the widow")[0]).toBe("ok");
}); // biome-ignore format: sentences

test("a girth over more layers is smaller only where they are laced", () => {
  const over = (beneath: string, waist: number, more: Partial<Record<string, Cell>> = {}) =>
    HEADS.map((one) => ({ Wearer: "the widow", "Worn beneath": beneath, "Waist girth": waist, ...more })[one] ?? null);
  const two = (a: readonly Cell[], b: readonly Cell[]) => checked(chart(WIDOW, a, b), "the widow");
  expect(two(over("shift, stays", 68), over("shift, stays, petticoat", 70))).toEqual(["ok", []]);
  const smaller = two(over("shift, stays", 70), over("petticoat over stays and shift", 66));
  expect(smaller[0]).toBe("check: doubtful: the waist girth of the widow over petticoat, stays and shift is 66 cm, and over shift and stays 70 cm: a girth does not shrink under petticoat; measure both again");
  expect(smaller[1]).toEqual(["3 Waist girth", "2 Waist girth"]);
  const loose = two(over("shift, stays", 68), over("shift, stays, petticoat", 74));
  expect(loose[0]).toMatch(/petticoat can't add 6 cm; was it laced alike\? Measure both again$/);
  const said = two(over("shift, stays", 68, { Laced: "closed" }), over("shift, stays, petticoat", 70, { Laced: "2 cm open" }));
  expect(said).toEqual(['check: doubtful: the stays of the widow over shift, stays and petticoat were laced "2 cm open", and over shift and stays "closed": lace them alike and measure again', ["3 Laced", "2 Laced"]]);
  expect(two(over("shift, stays", 27), over("skin", 75))[0]).toMatch(/one of them may be in another unit or halved/);
  const alike = two(over("shift, stays", 68), over("stays, shift", 68));
  expect(alike[0]).toMatch(/^check: doubtful: two rows are of the widow over shift and stays: .*; also two rows are of/);
  // What both rows have to say alike is said once, and both are marked.
  expect(two(over("shift, stays", 68), over("shift, stays", 68))).toEqual([
    "check: doubtful: two rows are of the widow over shift and stays: where they are two people, give them different names; else delete the older row",
    ["2 Wearer", "3 Wearer"]]);
  // Over stays a waist is no body's: the survey is not asked.
  expect(two(over("shift, stays", 56), over("shift, stays, petticoat", 57))[0]).toBe("ok");
}); // biome-ignore format: sentences
