import { expect, test } from "vitest";
import { GATHER_WIDTH } from "../../../functions/pleats/GATHER_WIDTH.ts";
import { PLEAT_COUNT } from "../../../functions/pleats/PLEAT_COUNT.ts";
import { TAKE_UP } from "../../../functions/pleats/TAKE_UP.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(TAKE_UP, "in");

test("half a skirt 44 inches wide is taken up 30 at the waist, 24 at the hip and 16 1/2 at the hem", () => {
  // PL-10, PL-11, PL-12, printed: Conover, Complete Course in Dressmaking, vol. 5, 1921-22, pp. 63-64.
  expect(figure(44, 14)).toBe(30);
  expect(figure(44, 20)).toBe(24);
  expect(figure(44, 27.5)).toBe(16.5);
});

test("what gathers draw in and what pleats hide is just this", () => {
  const flat = calls(GATHER_WIDTH, "in").figure(31, 2.4);
  expect(figure(flat, 31)).toBeCloseTo(31 * 1.4, 12);
  expect(calls(PLEAT_COUNT, "in").step("taken", 44, 14, 1)).toBe(figure(44, 14));
});

test("cloth as wide as wanted has nothing to take up", () => {
  expect(figure(30, 30)).toBe(0);
});

test("cloth narrower than wanted is refused", () => {
  expect(refusal(14, 44)).toBe("flat must be at least as wide as finished, not 14 in against 44 in");
});
