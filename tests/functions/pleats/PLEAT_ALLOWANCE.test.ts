import { expect, test } from "vitest";
import { PLEAT_ALLOWANCE } from "../../../functions/pleats/PLEAT_ALLOWANCE.ts";
import { PLEAT_MARK } from "../../../functions/pleats/PLEAT_MARK.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(PLEAT_ALLOWANCE, "cm");

test("eighteen pleats 4 cm deep take 144 cm more than the section of 92", () => {
  // PL-03, printed: NIMI, Dress Making Trade Practical, p. 203 ex. 1b, 236 cm in all.
  expect(figure(18, 4)).toBe(236 - 92);
});

test("a box or an inverted pleat is two knife pleats turned apart or together, and takes twice as much", () => {
  for (const style of ["box", "inverted"]) expect(figure(5, 3, style)).toBe(2 * figure(5, 3));
});

test("what one pleat takes is the cloth from its first chalk mark to its last, less the face of a box", () => {
  const mark = calls(PLEAT_MARK, "cm");
  const span = (last: number, style: string) =>
    mark.figure(last, 60, 1, 4, style) - mark.figure(1, 60, 1, 4, style);
  expect(span(2, "knife")).toBeCloseTo(step("each", 1, 4), 12);
  expect(span(3, "inverted")).toBeCloseTo(step("each", 1, 4, "inverted"), 12);
  expect(span(4, "box") - 2 * 4).toBeCloseTo(step("each", 1, 4, "box"), 12);
});

test("no pleats, or pleats of no depth, take nothing", () => {
  expect(figure(0, 4)).toBe(0);
  expect(figure(6, 0, "box")).toBe(0);
});

test("pleats fewer than none and depths in words are refused", () => {
  expect(refusal(-1, 4)).toBe("count must be at least 0, not -1");
  expect(refusal(6, "deep")).toBe('depth must be a length, not "deep"');
});
