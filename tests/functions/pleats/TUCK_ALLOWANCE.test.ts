import { expect, test } from "vitest";
import { TUCK_ALLOWANCE } from "../../../functions/pleats/TUCK_ALLOWANCE.ts";
import { TUCK_MARK } from "../../../functions/pleats/TUCK_MARK.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(TUCK_ALLOWANCE, "in");

test("three half-inch tucks need three inches more", () => {
  // TU-05, rule printed, answer worked: Kinne & Cooley, Clothing and Health, 1916, lesson 11 problem 2.
  expect(figure(3, 1 / 2)).toBe(3);
});

test("thirty-two quarter-inch tucks hold sixteen inches of cloth", () => {
  // TU-07, answer worked: an arithmetic of the time, Complete Arithmetic, problem 5; author from memory.
  expect(figure(32, 1 / 4)).toBe(16);
});

test("a tuck stitched three eighths from its fold takes three quarters of an inch", () => {
  // TU-09, printed: Fryer, Mary Frances Sewing Book, 1913, To Tuck Dress.
  expect(step("each", 1, 3 / 8)).toBe(3 / 4);
});

test("a tucked width marked on the flat is longer than the sewn one by this, whatever the spaces", () => {
  const mark = calls(TUCK_MARK, "in");
  for (const [count, width, space] of [[5, 0.25, 0.5], [8, 0.125, 0], [3, 1, 2.5]] as const) {
    const flat = mark.figure(count, width, space, 2, "second") + width - 2;
    const sewn = count * mark.step("sewn_repeat", 1, width, space) - space;
    expect(flat - sewn).toBeCloseTo(figure(count, width), 12);
  }
}); // biome-ignore format: a table

test("half a tuck and a width below nothing are refused", () => {
  expect(refusal(2.5, 1)).toBe("count must be a whole number, not 2.5");
  expect(refusal(3, -1)).toBe("width must be at least 0, not -1 in");
});
