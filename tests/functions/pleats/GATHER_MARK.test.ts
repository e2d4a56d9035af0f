import { expect, test } from "vitest";
import { GATHER_MARK } from "../../../functions/pleats/GATHER_MARK.ts";
import { calls } from "../calls.ts";

const { answer, figure, refusal } = calls(GATHER_MARK, "in");

test("skirt and band are each put in eight equal parts, the inch of overlap left out", () => {
  // GA-13, printed: Johnson, It's Fun to Sew Aprons and Skirts, ext. L-86, 1964, Gather in fullness.
  let [skirt, band] = [0, 0];
  for (let number = 1; number <= 8; number += 1) {
    const [onSkirt, onBand] = [figure(number, 72), figure(number, 27, 8, 1)];
    expect(onSkirt - skirt).toBeCloseTo(9, 12);
    expect(onBand - band).toBeCloseTo(3.25, 12);
    [skirt, band] = [onSkirt, onBand];
  }
  expect(skirt).toBeCloseTo(72, 12);
  expect(band + 1).toBeCloseTo(27, 12);
});

test("between any two matched marks the gathers are equally full", () => {
  for (const parts of [3, 4, 7, 16]) {
    for (let number = 1; number <= parts; number += 1) {
      expect(figure(number, 110, parts) / figure(number, 31, parts, 1.5)).toBeCloseTo(110 / 29.5, 10);
    }
  }
});

test("past the last mark the cell stays empty", () => {
  expect(answer(9, 72)).toBe("");
  expect(answer(2, 72, 1)).toBe("");
});

test("an overlap as long as the band, and a mark before the first, are refused", () => {
  expect(refusal(1, 27, 8, 27)).toBe("skip must be less than the edge of 27 in, not 27 in");
  expect(refusal(0, 27)).toBe("number must be at least 1, not 0");
});
