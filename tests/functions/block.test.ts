import { expect, test } from "vitest";
import { headingText } from "../../functions/block.ts";

test("the outline of a piece is no heading, however long a heading may be", () => {
  const outline = `  M 0.5,-3 L ${"10 20 ".repeat(12)}Z | fold | edges waist`;
  expect(headingText(outline)).toBe("");
  const long = `M 12 of the rehearsal's list: what the Miller's Daughter wears above the stays (inches)`;
  expect(headingText(long)).toBe(
    "m 12 of the rehearsal's list what the miller's daughter wears above the stays",
  );
  expect(headingText("M 1 L 2?")).toBe("m 1 l 2");
});
