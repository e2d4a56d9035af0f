import { expect, test } from "vitest";
import { SKIRT_LENGTH } from "../../../functions/flare/SKIRT_LENGTH.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(SKIRT_LENGTH, "in");

test("skirt and clearance together are waist to floor in shoes", () => {
  for (const [waist, clear, heel] of [[41, 1.5, 2], [43.5, -6, 0.75], [39, 12, 0]] as const) {
    expect(figure(waist, clear, heel) + clear).toBeCloseTo(waist + heel, 12);
  }
}); // biome-ignore format: one row a place

test("over a pad the back comes out longer than the front by as much as it was measured longer", () => {
  expect(figure(44, 1, 1.5) - figure(41.5, 1, 1.5)).toBe(2.5);
});

test("a clearance that leaves no skirt is refused", () => {
  expect(refusal(30, 30)).toBe("clearance must be less than the 30 in from waist to floor, not 30 in");
});
