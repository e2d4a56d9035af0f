import { expect, test } from "vitest";
import { misspeltPhrase, nearestWord } from "../../functions/nearest-word.ts";

const NAMES = ["waist girth", "hip girth", "back waist length", "stature"];

test("the word that was meant is the nearest one, when it is near enough", () => {
  expect(nearestWord("spred_per_gap", ["SPREAD_TOTAL", "SPREAD_PER_GAP"])).toBe("SPREAD_PER_GAP");
  expect(nearestWord("knief", ["box", "knife"])).toBe("knife");
  expect(nearestWord("ruffle", ["box", "knife"])).toBeUndefined();
  expect(nearestWord("x".repeat(100), ["x"])).toBeUndefined();
});

test("a phrase is misspelt when each of its words is a slip of the pen from the other's", () => {
  expect(misspeltPhrase("waist girht", NAMES)).toBe("waist girth");
  expect(misspeltPhrase("Wiast  girth", NAMES)).toBe("waist girth");
  expect(misspeltPhrase("statue", NAMES)).toBe("stature");
  for (const other of [
    "waist girth",
    "front waist length",
    "knee girth",
    "waist",
    "high hip girth",
    "shoe",
    "",
  ])
    expect(misspeltPhrase(other, NAMES), other).toBeUndefined();
});
