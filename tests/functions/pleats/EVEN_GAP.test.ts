import { expect, test } from "vitest";
import { BUTTON_COUNT } from "../../../functions/notions/BUTTON_COUNT.ts";
import { BUTTON_MARK } from "../../../functions/notions/BUTTON_MARK.ts";
import { EVEN_GAP } from "../../../functions/pleats/EVEN_GAP.ts";
import { TUCK_COUNT } from "../../../functions/pleats/TUCK_COUNT.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(EVEN_GAP, "cm");

test("31 tucks on 39 cm with 1.5 cm plain at each edge are 1.2 cm apart", () => {
  // TU-01, printed: Dress Making, Trade Practical, p. 209 ex. 1.
  expect(figure(39, 31, 1.5)).toBeCloseTo(1.2, 12);
});

test("it is the gap that TUCK_COUNT corrects to, and the step from one button's mark to the next", () => {
  const tucks = calls(TUCK_COUNT, "cm");
  expect(figure(40.3, tucks.figure(40.3, 1.7, 2), 2)).toBeCloseTo(
    tucks.step("corrected_gap", 40.3, 1.7, 2),
    12,
  );
  const count = calls(BUTTON_COUNT, "cm").figure(40, 7, 1.5, 8);
  const mark = (number: number) => calls(BUTTON_MARK, "cm").figure(number, 40, count, 1.5, 8);
  expect(figure(40, count, 1.5, 8)).toBeCloseTo(mark(3) - mark(2), 12);
});

test("ends that take all of the edge are refused", () => {
  expect(refusal(10, 4, 5)).toBe("start and end must be less than the edge of 10 cm, not 10 cm together");
});
