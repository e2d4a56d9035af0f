import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { CLOTH_CHECK } from "../../../functions/cloth/CLOTH_CHECK.ts";
import type { Cell } from "../../../functions/define.ts";
import { explain, run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const setting = { unit: "in", plan: quickLay } as const;
const CUT = ["Piece", "Outline", "How many", "Cloth"];
const PANEL = "M 0 0 H 20 V 40 H 0 Z";
const cutList = (...rows: (readonly Cell[])[]) => asBlock([CUT, ...rows].flat(), 4, []);
const skirt = cutList(["panel", PANEL, 3, "linen"], ["cuff", "M 0 0 H 8 V 4 H 0 Z", 2, "wool, scraps"]);
const HEADS = [
  "Cloth",
  "Name",
  "Width",
  "Usable width",
  "Length",
  "Shape",
  "Nap",
  "Repeat",
  "Shrinkage",
  "Reserved",
  "Reserved for",
];
const row = (given: Readonly<Record<string, Cell>>): Cell[] => HEADS.map((head) => given[head] ?? null);
const stock = (...rows: Readonly<Record<string, Cell>>[]) =>
  asBlock([HEADS, ...rows.map(row)].flat(), HEADS.length, []);
const chest = { Cloth: "linen", Name: "chest linen", "Usable width": 42, Length: 50 };
const roll = { Cloth: "Linen, bleached", Name: "roll end", "Usable width": 22, Length: 45 };
const check = (...args: Parameters<typeof run>[1]) => run(CLOTH_CHECK, args, setting);

test("the linen of the list is laid on the linen in stock, and the Working and the Drawing say which on which", () => {
  const list = stock(chest, roll, { Cloth: "wool", Name: "wool scraps", "Usable width": 30, Length: 10 });
  // Two panels of 20 lie side by side on 42, the third on 22.
  expect(check(skirt, list, "linen")).toBe("ok");
  expect(check(skirt, list, "wool")).toBe("ok");
  const { steps, shapes } = explain(CLOTH_CHECK, [skirt, list, "linen"], setting);
  expect(
    steps.filter(({ rule }) => rule.startsWith("cut from")).map(({ rule, value }) => [rule, value]),
  ).toEqual([
    ["cut from chest linen", "2 of panel"],
    ["cut from roll end", "1 of panel"],
  ]);
  expect(shapes.flatMap((shape) => ("label" in shape ? [shape.label] : []))).toEqual(
    expect.arrayContaining(["chest linen", "roll end", "panel"]),
  );
  expect(check(skirt, list, null)).toMatchObject({ refusal: expect.stringContaining("pieces of 2 cloths") });
  expect(check(skirt, stock(chest), "linen")).toMatch(/^check: .*no place for 1 of panel/);
});

test("what is reserved for other jobs is not there, what is reserved for this one is", () => {
  const reserved = stock({ ...chest, Reserved: 11, "Reserved for": "The miller" }, roll);
  // 50 - 11 = 39 in are shorter than a panel of 40.
  expect(check(skirt, reserved, "linen")).toMatch(/^check: .*no place for 2 of panel/);
  expect(check(skirt, reserved, "linen", "the  Miller")).toBe("ok");
  expect(check(skirt, stock({ ...chest, Reserved: 10 }, roll), "linen")).toBe("ok");
  expect(check(skirt, stock({ ...chest, Reserved: 50 }), "linen")).toMatchObject({
    refusal:
      "there is no linen in stock, or all of it is reserved for other jobs: give a piece of it, or buy it",
  });
  expect(check(skirt, stock({ ...chest, Reserved: 51 }, roll), "linen")).toMatchObject({
    refusal: "51 in of chest linen is reserved, but it is only 50 in long: reserve less of it",
    at: { position: 1, cell: HEADS.length + HEADS.indexOf("Reserved") },
  });
});

test("cloth is washed before it is cut: what is left of it must do, also of a remnant with a shape", () => {
  // 45 x 0.9 = 40.5 holds a panel of 40, 45 x 0.85 = 38.25 does not.
  expect(check(skirt, stock(chest, { ...roll, Shrinkage: 0.1 }), "linen")).toBe("ok");
  expect(check(skirt, stock(chest, { ...roll, Shrinkage: 0.15 }), "linen")).toMatch(/^check: /);
  const odd = { Cloth: "linen", Name: "corner", Shape: "M 0 0 H 21 V 41 H 30 V 60 H 0 Z" };
  expect(check(skirt, stock(chest, odd), "linen")).toBe("ok");
  expect(check(skirt, stock(chest, { ...odd, Shrinkage: 0.4 }), "linen")).toMatch(/^check: /);
});

test("a nap and a repeat come from the list: two gores that would be turned end for end need more", () => {
  const gores = cutList(["gore", "M 30 0 L 40 0 L 40 60 L 0 60 Z", 2, "linen"]);
  const wide = { ...chest, "Usable width": 54, Length: 61 };
  expect(check(gores, stock(wide), "linen")).toBe("ok");
  expect(check(gores, stock({ ...wide, Nap: "yes" }), "linen")).toMatch(/^check: /);
  expect(check(skirt, stock({ ...chest, Nap: "yes" }, roll), "linen")).toMatchObject({
    refusal:
      "chest linen and roll end are both linen, but only chest linen has a nap: write the same for both, or call them different cloths",
    at: { position: 1, cell: 2 * HEADS.length + HEADS.indexOf("Nap") },
  });
});

test("cloth without a length, two of one name and a misspelt cloth are each refused at their cell", () => {
  const cell = (line: number, head: string) => ({
    position: 1,
    cell: line * HEADS.length + HEADS.indexOf(head),
  });
  expect(check(skirt, stock(chest, { ...roll, Length: null }), "linen")).toMatchObject({
    refusal: "roll end has no length: measure it, or take its row out of the stock",
    at: cell(2, "Length"),
  });
  expect(check(skirt, stock(chest, { ...roll, Name: "Chest  linen" }), "linen")).toMatchObject({
    refusal:
      'two pieces of cloth in stock are called "Chest  linen", in rows 1 and 2: give each a name of its own',
    at: cell(2, "Name"),
  });
  expect(check(skirt, stock({ ...chest, Width: 40 }), "linen")).toMatchObject({
    at: cell(1, "Usable width"),
  });
  expect(check(skirt, stock({ ...chest, Cloth: "linnen" }), "linen")).toMatchObject({
    refusal: 'no cloth in stock is "linen"; is "linnen" meant?',
  });
  expect(check(skirt, stock({ ...chest, Length: "2 yd?" }), "linen")).toMatchObject({
    at: cell(1, "Length"),
  });
});

test("a cloth whose usable width is not known is laid on at its full width, and that is said", () => {
  const full = stock({ ...chest, "Usable width": null, Width: 42 }, roll);
  expect(check(skirt, full, "linen")).toBe("ok");
  expect(toLookAt(CLOTH_CHECK, [skirt, full, "linen"], setting)).toEqual([
    "CLOTH_CHECK: the usable width of chest linen is not given: the full width is laid on, with its selvedges",
  ]);
});
