import { expect, test } from "vitest";
import { TUCK_CREASE } from "../../../functions/pleats/TUCK_CREASE.ts";
import { TUCK_MARK } from "../../../functions/pleats/TUCK_MARK.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(TUCK_CREASE, "in");

test("eighth-inch tucks an eighth apart are creased three eighths from the last stitching", () => {
  // TU-06, printed: McGlauflin, Handicraft for Girls, 1910, Tucking and exercise 41; the space is derived.
  expect(figure(1 / 8, 1 / 8)).toBe(3 / 8);
});

test("a ruffle set in an inch tuck with a quarter-inch seam is creased two and a quarter inches up", () => {
  // TU-08, printed: McGlauflin 1910, exercise 41.
  expect(figure(1, 1 / 4)).toBe(2.25);
});

test("the same crease is found by marking all tucks out on the flat", () => {
  const mark = calls(TUCK_MARK, "in").figure;
  for (const [width, space] of [[0.125, 0.125], [0.5, 1], [1, 0]] as const) {
    expect(mark(4, width, space, 2) - mark(3, width, space, 2, "second")).toBeCloseTo(figure(width, space), 12);
  }
}); // biome-ignore format: a table

test("sewn and pressed over, what shows between two tucks is the space asked for", () => {
  // From stitching to stitching: the crease less one width. The earlier tuck lies over one width of that.
  const [width, space] = [0.375, 0.625];
  expect(figure(width, space) - width - width).toBeCloseTo(space, 12);
  expect(step("tuck", width, space)).toBeCloseTo(2 * width, 12);
});

test("tucks of no width and spaces below nothing are refused", () => {
  expect(refusal(0, 1)).toBe("width must be at least 1/32 in, not 0");
  expect(refusal(1, -0.5)).toBe("space must be at least 0, not -1/2 in");
});
