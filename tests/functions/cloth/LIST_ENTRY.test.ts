import { expect, test } from "vitest";
import { asBlock } from "../../../functions/block.ts";
import { LIST_ENTRY } from "../../../functions/cloth/LIST_ENTRY.ts";
import type { Cell } from "../../../functions/define.ts";
import { calls } from "../calls.ts";

const { answer, refusal } = calls(LIST_ENTRY, "in");
const HEADS = ["Piece", "Cloth", "Width"];
const ROWS: readonly Cell[] = [
  "a",
  " wool ",
  54,
  "b",
  "LINEN, from the old sheets",
  36,
  "c",
  null,
  null,
  "d",
  "Linen",
  45,
  "e",
  "wool",
  54,
];
const LIST = asBlock([...HEADS, ...ROWS], 3, []);

test("each entry comes once, in the order of the list, and after the last an empty text", () => {
  expect([1, 2, 3, 4].map((number) => answer(LIST, "cloth", number))).toEqual(["wool", "LINEN", "", ""]);
  expect([1, 2, 3, 4].map((number) => answer(LIST, "width", number))).toEqual([54, 36, 45, ""]);
  expect([1, 2, 3].map((number) => answer(LIST, "width", number, "cloth", "linen"))).toEqual([36, 45, ""]);
  expect(answer(LIST, "width", 1, "cloth", null)).toBe("");
  // In a column that is no cloth, a comma belongs to the entry.
  expect(answer(asBlock(["who", "x", "Ann, the cook", 1], 2, []), "who", 1)).toBe("Ann, the cook");
  // The page's headings serve as well.
  expect(answer(asBlock(ROWS, 3, HEADS), "CLOTH?", 2)).toBe("LINEN");
  expect(answer(asBlock(["trimming", "braid"], 1, []), "trimming", 1)).toBe("braid");
});

test("headings and items that are not there are refused with the nearest", () => {
  expect(refusal(LIST, "cloht", 1)).toBe('the list has no column "cloht"; is "cloth" meant?');
  expect(refusal(LIST, "width", 1, "cloth", "linnen")).toBe(
    'no row of the list has "linnen" under cloth; is "LINEN" meant?',
  );
  expect(refusal(LIST, "width", 1, "cloth", "velvet")).toBe(
    'no row of the list has "velvet" under cloth, only "wool", "LINEN"',
  );
  expect(refusal(asBlock(["cloth", "cloth", "a", "b"], 2, []), "cloth", 1)).toBe(
    'the list has two columns headed "cloth": keep one',
  );
  expect(refusal(LIST, " ", 1)).toBe("heading is empty: write the heading of a column of the list");
});
