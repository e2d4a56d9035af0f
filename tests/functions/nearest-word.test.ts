import { expect, test } from "vitest";
import { misspelt, nearest } from "../../functions/nearest-word.ts";

const NAMES = ["waist girth", "hip girth", "back waist length", "stature"];

test("the word that was meant is the nearest one, when it is near enough", () => {
  expect(nearest("spred_per_gap", ["SPREAD_TOTAL", "SPREAD_PER_GAP"])).toBe("SPREAD_PER_GAP");
  expect(nearest("knief", ["box", "knife"])).toBe("knife");
  expect(nearest("ruffle", ["box", "knife"])).toBeUndefined();
  expect(nearest("x".repeat(100), ["x"])).toBeUndefined();
});

test("a phrase is misspelt when each of its words is a slip of the pen from the other's", () => {
  expect(misspelt("waist girht", NAMES)).toBe("waist girth");
  expect(misspelt("Wiast  girth", NAMES)).toBe("waist girth");
  expect(misspelt("statue", NAMES)).toBe("stature");
  for (const other of [
    "waist girth",
    "front waist length",
    "knee girth",
    "waist",
    "high hip girth",
    "shoe",
    "",
  ])
    expect(misspelt(other, NAMES), other).toBeUndefined();
});
