import { expect, test } from "vitest";
import { PLEAT_ALLOWANCE } from "../../../functions/pleats/PLEAT_ALLOWANCE.ts";
import { PLEAT_DEPTH } from "../../../functions/pleats/PLEAT_DEPTH.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(PLEAT_DEPTH, "in");

test("eight pleats share sixteen and a half inches at the hem, about two and an eighth each", () => {
  // PL-13, printed: Conover, Complete Course in Dressmaking, vol. 5, 1921, p. 69, rounded to eighths there.
  expect(Math.abs(step("each", 44, 27.5, 8) - 2.125)).toBeLessThanOrEqual(0.0625);
});

test("at the hip seven pleats share what the first has left, three and an eighth each", () => {
  // PL-14, printed: Conover 1921, p. 69: (24 − 2 1/8)/7.
  expect(step("each", 44 - 2.125, 20, 7)).toBeCloseTo(3.125, 12);
});

test("five normal pleats in 15.5 cm are 3.1 cm deep, as deep as they are wide", () => {
  // PL-18, rule printed, answer worked: NIMI, Dress Making Trade Practical, p. 205 ex. 5.
  expect(calls(PLEAT_DEPTH, "cm").figure(46.5, 15.5, 5)).toBeCloseTo(3.1, 12);
});

test("pleats of that depth take up just the difference", () => {
  for (const style of ["knife", "box", "inverted"]) {
    const depth = figure(57.25, 31.5, 9, style);
    expect(calls(PLEAT_ALLOWANCE, "in").figure(9, depth, style)).toBeCloseTo(57.25 - 31.5, 10);
  }
});

test("cloth narrower than it is to finish, and no pleats to share it, are refused", () => {
  expect(refusal(27, 44, 8)).toBe("flat must be at least as wide as finished, not 27 in against 44 in");
  expect(refusal(44, 27, 0)).toBe("count must be at least 1, not 0");
});
