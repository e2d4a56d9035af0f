import { expect, test } from "vitest";
import { PLEAT_MARK } from "../../../functions/pleats/PLEAT_MARK.ts";
import { PLEAT_TO_STRIPE } from "../../../functions/pleats/PLEAT_TO_STRIPE.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(PLEAT_TO_STRIPE, "cm");

test("marked out with PLEAT_MARK, every fold lies on the same place of the check", () => {
  for (const [repeat, shown, repeats] of [[15, 2.5, 1], [8, 4, 2], [6.3, 5, 3]] as const) {
    const depth = figure(repeat, shown, repeats);
    const fold = (number: number) =>
      calls(PLEAT_MARK, "cm").figure(number, 9 * shown, 9, depth, "knife", "fold");
    for (let number = 2; number <= 9; number += 1) {
      expect(fold(number) - fold(number - 1)).toBeCloseTo(repeats * repeat, 9);
    }
  }
}); // biome-ignore format: a table

test("what shows and the two layers behind it are whole repeats", () => {
  expect(2.5 + 2 * figure(15, 2.5)).toBeCloseTo(15, 12);
  expect(2.5 + 2 * figure(15, 2.5, 2)).toBeCloseTo(30, 12);
});

test("a third of the check showing is three times full, the pleats edge to edge", () => {
  // PL-06, rule printed: NIMI, Dress Making Trade Practical, p. 204: pleats as deep as wide take three times.
  expect(step("fullness", 12, 4)).toBeCloseTo(3, 12);
  expect(figure(12, 4)).toBeCloseTo(4, 12);
});

test("as much showing as there is cloth to a pleat is refused", () => {
  expect(refusal(12, 12)).toBe("shown must be less than the 12 cm of cloth to each pleat, not 12 cm");
  expect(refusal(12, 30, 2)).toBe("shown must be less than the 24 cm of cloth to each pleat, not 30 cm");
});
