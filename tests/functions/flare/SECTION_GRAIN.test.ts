import { expect, test } from "vitest";
import { SECTION_GRAIN } from "../../../functions/flare/SECTION_GRAIN.ts";
import { SLASHED_PANEL } from "../../../functions/flare/SLASHED_PANEL.ts";
import { calls } from "../calls.ts";

const { figure, refusal } = calls(SECTION_GRAIN, "cm");

test("sections lean as those of an evenly slashed panel do", () => {
  const gaps = [2, 2, 2, 2, 2];
  const slashed = calls(SLASHED_PANEL, "cm");
  const angle = slashed.step("angle", 60, 24, gaps);
  for (let section = 1; section <= 6; section += 1) {
    const drawn = slashed.step(`lean_${section}`, 60, 24, gaps, "hem", 0.5, 2);
    expect(figure(section, 6, angle, 2)).toBeCloseTo(drawn, 9);
  }
});

test("the straight section does not lean, and those on either side lean alike", () => {
  expect(figure(4, 7, 84, 4)).toBe(0);
  expect(figure(1, 7, 84, 4)).toBe(-figure(7, 7, 84, 4));
});

test("a section the panel does not have is refused", () => {
  expect(refusal(6, 5, 50)).toBe("section must be at most 5, as there are 5 sections, not 6");
});
