import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { CLOTH_TO_BUY } from "../../../functions/cloth/CLOTH_TO_BUY.ts";
import type { Cell } from "../../../functions/define.ts";
import { besideAnswer, explain, run } from "../../../functions/run.ts";
import { toLookAt } from "../../../functions/to-look-at.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const setting = { unit: "in", plan: quickLay } as const;
const PANEL = "M 0 0 H 20 V 40 H 0 Z";
const cutList = asBlock(
  ["Piece", "Outline", "How many", "Cloth", "panel", PANEL, 5, "linen", "hood", PANEL, 2, "velvet"],
  4,
  [],
);
const HEADS = ["Name", "Cloth", "Usable width", "Length", "Reserved", "Reserved for"];
const stock = (...rows: (readonly Cell[])[]) => asBlock([HEADS, ...rows].flat(), 6, []);
const chest = ["chest linen", "linen", 42, 45, null, null];
const roll = ["roll end", "linen", 22, 95, 50, "miller"];
const buy = (...args: Parameters<typeof run>[1]) => run(CLOTH_TO_BUY, args, setting);

test("what the stock takes need not be bought, and a job's own cloth counts for it", () => {
  // Two on the chest linen, one on the 45 in that are left of the roll, two of five side by side on new cloth.
  expect(buy(cutList, stock(chest, roll), "linen", 54)).toBe(40);
  expect(buy(cutList, stock(chest, roll), "linen", 45, "miller")).toBe(40);
  // With 95 in the roll takes two: one is bought, on cloth no wider than a panel.
  expect(buy(cutList, stock(chest, roll), "linen", 20, "miller")).toBe(40);
  expect(buy(cutList, stock(chest, roll), "linen", 20)).toBe(80);
  expect(buy(cutList, stock(chest, [...chest].with(0, "second"), roll), "linen", 54)).toBe(0);
  // No velvet is in stock, or nothing at all: all of it is bought.
  expect(buy(cutList, stock([null, null, null, null, null, null]), "velvet", 42)).toBe(40);
  expect(buy(cutList, stock(chest, roll), "velvet", 42)).toBe(40);
  expect(buy(cutList, stock(chest, roll), "velvet", 19)).toMatchObject({
    refusal: expect.stringContaining("hood"),
  });
  expect(buy(cutList, stock(chest, roll), "linnen", 54)).toMatchObject({
    refusal: expect.stringContaining('is "linen" meant?'),
  });
});

test("capitals, spare spaces and what follows a comma make no difference to the name of a cloth", () => {
  const list = asBlock(["Piece", "Outline", "How many", "Fabric", "panel", PANEL, 3, "fine  linen, lies across"], 4, []); // biome-ignore format: one row
  const fine = stock(["remnant", "Fine linen, from the play", 42, 45, null, null]);
  expect(buy(list, fine, "fine linen", 54)).toBe(40);
});

test("the Working says what is cut from which cloth, and an answer that is not proved least says so", () => {
  const { steps } = explain(CLOTH_TO_BUY, [cutList, stock(chest, roll), "linen", 54], setting);
  expect(steps.map(({ rule, value }) => `${rule}: ${value}`)).toEqual(
    expect.arrayContaining([
      "cut from chest linen: 2 of panel",
      "cut from roll end: 1 of panel",
      "cut from bought cloth: 2 of panel",
    ]),
  );
  // A second panel would lie on the stock by area, but not by width.
  const beside = (length: number) =>
    besideAnswer(
      CLOTH_TO_BUY,
      [cutList, stock(["odd end", "linen", 39, length, null, null]), "linen", 20],
      setting,
    );
  expect(beside(300)).toBe("cut all 5 pieces from odd end");
  expect(beside(150)).toBe(
    "cut 3 of panel from odd end; cut 2 of panel from cloth to buy: the best way to share them out that was found, not proved least",
  );
  expect(beside(39)).toBe(
    "no piece is small enough for the cloth in stock: cut all 5 pieces from cloth to buy",
  );
});

test("beside the length stands which pieces are cut from which cloth", () => {
  expect(besideAnswer(CLOTH_TO_BUY, [cutList, stock(chest, roll), "linen", 54], setting)).toBe(
    "cut 2 of panel from chest linen; cut 1 of panel from roll end; cut 2 of panel from cloth to buy: the best way to share them out that was found, not proved least",
  );
});

test("of cloth that is not in stock nothing says whether it has a nap or a repeat: what is taken stands beside the length", () => {
  const napped = stock([...chest], ["velvet end", "velvet", 42, 45, null, null]);
  expect(besideAnswer(CLOTH_TO_BUY, [cutList, stock(chest), "velvet", 42], setting)).toBe(
    "cut all 2 pieces from cloth to buy, laid as cloth without nap and repeat: none of it is in stock",
  );
  expect(besideAnswer(CLOTH_TO_BUY, [cutList, napped, "velvet", 42], setting)).not.toContain("laid as");
  const working = (list: ReturnType<typeof stock>) =>
    explain(CLOTH_TO_BUY, [cutList, list, "velvet", 42], setting).steps.map(({ rule }) => rule);
  expect(working(stock(chest))).toContain("none of it is in stock: it is laid as");
  expect(working(napped)).not.toContain("none of it is in stock: it is laid as");
});

test("of more than 60 copies the length is called an estimate, with the reason", () => {
  const small = "M 0 0 H 10 V 4 H 0 Z";
  const many = (count: number) =>
    asBlock(["Piece", "Outline", "How many", "Cloth", "panel", PANEL, 3, "linen", "patch", small, count, "linen"], 4, []);
  const odd = stock(["odd end", "linen", 39, 50, null, null]);
  const said = (count: number) => toLookAt(CLOTH_TO_BUY, [many(count), odd, "linen", 54], setting);
  expect(said(58)).toEqual([
    expect.stringMatching(
      /is an estimate: of 61 copies, more than 60, those are bought that found no place in one lay of the stock/,
    ),
  ]);
  expect(said(20).join()).not.toMatch(/an estimate/);
}); // biome-ignore format: a row
