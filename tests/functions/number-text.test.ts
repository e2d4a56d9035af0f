import { expect, test } from "vitest";
import { numberText, toDigits } from "../../functions/number-text.ts";

test("a third is written with six digits, and zeros at the end are left out", () => {
  expect(numberText(1 / 3)).toBe("0.333333");
  expect(numberText(2.5)).toBe("2.5");
  expect(numberText(40)).toBe("40");
  expect(numberText(123456.789)).toBe("123457");
});

test("digits are counted from the first digit that is not zero", () => {
  expect(numberText(0.000123456, 2)).toBe("0.00012");
  expect(toDigits(0.1 + 0.2, 12)).toBe(0.3);
});
