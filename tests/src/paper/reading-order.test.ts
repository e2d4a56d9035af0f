import { expect, test } from "vitest";
import { wordsFromLeft } from "../../../src/paper/reading-order.ts";

test.each([
  ["skirt half, 12 in", null],
  ["שרוול ארוך", ["ארוך", "שרוול"]],
  ["sleeve שרוול 12 ארוך 3 in", ["sleeve", "ארוך", "12", "שרוול", "3", "in"]],
  ["كم and שרוול", ["كم", "and", "שרוול"]],
])("the words of %s stand on paper from left to right as %j", (text, words) => {
  expect(wordsFromLeft(text)).toEqual(words);
});
