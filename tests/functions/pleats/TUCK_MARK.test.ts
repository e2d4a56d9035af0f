import { expect, test } from "vitest";
import { TUCK_COUNT } from "../../../functions/pleats/TUCK_COUNT.ts";
import { TUCK_MARK } from "../../../functions/pleats/TUCK_MARK.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(TUCK_MARK, "in");

test("tucks stitched three eighths from the fold are creased every inch and a half", () => {
  // TU-09, printed: Fryer, Mary Frances Sewing Book, 1913, To Tuck Dress; that a space of 3/8 in shows is derived.
  for (let number = 2; number <= 6; number += 1) {
    expect(figure(number, 3 / 8, 3 / 8) - figure(number - 1, 3 / 8, 3 / 8)).toBeCloseTo(1.5, 12);
  }
});

test("each tuck's crease lies midway between the two lines that are stitched together", () => {
  for (const number of [1, 2, 7]) {
    const [first, second] = ["first", "second"].map((line) => figure(number, 0.25, 0.75, 3, line));
    expect(figure(number, 0.25, 0.75, 3)).toBeCloseTo((first! + second!) / 2, 12);
    expect(second! - first!).toBeCloseTo(0.5, 12);
  }
  expect(figure(1, 0.25, 0.75, 3, "first")).toBe(3);
});

test("stitched up one after another, seams fall a width and a space apart: blind tucks fold to seam", () => {
  // Every tuck already sewn draws the cloth up by twice its width.
  for (const [width, space] of [[0.5, 1], [1, 0]] as const) {
    for (let number = 1; number <= 5; number += 1) {
      const sewn = figure(number, width, space, 2, "first") - (number - 1) * 2 * width;
      expect(sewn).toBeCloseTo(2 + (number - 1) * (width + space), 12);
    }
    expect(step("sewn_repeat", 1, width, space)).toBeCloseTo(width + space, 12);
  }
}); // biome-ignore format: a table

test("the last tuck of a counted width ends at its plain edge", () => {
  // TU-01, printed: NIMI, Dress Making Trade Practical, p. 209 ex. 1: 31 tucks on 39 cm, 1.2 cm apart; tucks of 0.4 cm.
  const count = calls(TUCK_COUNT, "cm").figure(39, 1.2, 1.5);
  const last = calls(TUCK_MARK, "cm").figure(count, 0.4, 1.2 - 0.4, 1.5, "first");
  expect(last - (count - 1) * 0.8 + 1.5).toBeCloseTo(39, 9);
});

test("a tuck before the first and a line a tuck does not have are refused", () => {
  expect(refusal(0, 0.5, 1)).toBe("number must be at least 1, not 0");
  expect(refusal(1, 0.5, 1, 0, "third")).toBe('which must be "crease", "first" or "second", not "third"');
});
