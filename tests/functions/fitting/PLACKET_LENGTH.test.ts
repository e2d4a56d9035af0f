import { expect, test } from "vitest";
import { PLACKET_LENGTH } from "../../../functions/fitting/PLACKET_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const placket = (...args: number[]) => run(PLACKET_LENGTH, args, { unit: "in" }) as number;

test("the opening with both sides of the slit goes just round what passes", () => {
  const slit = placket(27, 41.5, 1);
  expect(27 + 2 * slit).toBeCloseTo(41.5 + 1, 12);
});

test("an opening large enough needs no slit", () => {
  expect(placket(24, 22)).toBe(0);
  expect(placket(24, 23.5, 1)).toBe(0.25);
});

test("the strip that binds it is twice as long and an inch", () => {
  // Kinne & Cooley, Clothing and Health, 1916, bloomers: one inch more than twice the opening; rule
  // printed, answer worked: the slit's two sides are what passes less the opening.
  const slit = placket(22, 40, 2);
  expect(2 * slit + 1).toBe(40 + 2 - 22 + 1);
  expect(slit).toBe(10);
});
