import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { CUT_FROM } from "../../../functions/cloth/CUT_FROM.ts";
import { run } from "../../../functions/run.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const cutList = asBlock(
  [
    "Piece",
    "Outline",
    "How many",
    "Cloth",
    "panel",
    "M 0 0 H 20 V 40 H 0 Z",
    5,
    "linen",
    "cuff",
    "M 0 0 H 10 V 4 H 0 Z",
    2,
    "linen",
  ],
  4,
  [],
);
const stock = asBlock(
  [
    ...["Name", "Cloth", "Usable width", "Length"],
    ...["chest linen", "linen", 42, 40, "scrap", "linen", 11, 9, "cloak end", "broadcloth", 54, 90],
  ],
  4,
  [],
);
const cut = (name: string | null, cloth: string | null = "linen") =>
  run(CUT_FROM, [cutList, stock, name, cloth, 54], { unit: "in", plan: quickLay });

test("each piece of cloth says what is cut from it, and one whose cloth no piece is of, nothing", () => {
  // The panels fill the chest linen to its end; the cuffs lie behind one another on the scrap.
  expect(cut("Chest linen")).toBe("2 of panel");
  expect(cut("scrap")).toBe("2 of cuff");
  expect(cut("cloak end", "broadcloth")).toBe("nothing");
  expect(cut("")).toBe("");
});

test("a name that the stock does not have, or that is of another cloth, is refused", () => {
  expect(cut("chest linnen")).toMatchObject({
    refusal: 'no cloth in stock is called "chest linnen"; is "chest linen" meant?',
  });
  expect(cut("cloak end")).toMatchObject({
    refusal: "cloak end is broadcloth, not linen: name a piece of linen",
    at: { position: 1, cell: 13 },
  });
});
