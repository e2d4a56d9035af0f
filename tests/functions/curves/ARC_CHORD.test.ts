import { expect, test } from "vitest";
import { ARC_CHORD } from "../../../functions/curves/ARC_CHORD.ts";
import { ARC_RISE } from "../../../functions/curves/ARC_RISE.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(ARC_CHORD, "in");

test("it undoes ARC_RISE, and an arc of more than half a circle is as wide as what is left of it", () => {
  expect(calls(ARC_RISE, "in").figure(9, figure(9, 2.5))).toBeCloseTo(2.5, 12);
  expect(figure(9, 18 - 2.5)).toBeCloseTo(figure(9, 2.5), 12);
});

test("a rise higher than the circle is refused", () => {
  expect(refusal(10, 21)).toBe(
    "rise must be at most 20 in, the diameter of a circle of radius 10 in, not 21 in",
  );
});
