import { expect, test } from "vitest";
import { GRADE } from "../../../functions/body/GRADE.ts";
import { run } from "../../../functions/run.ts";

test("sizes up and as many down come back to the size drafted", () => {
  const up = run(GRADE, [96, 4, 2.5], { unit: "cm" }) as number;
  expect(up).toBe(106);
  expect(run(GRADE, [up, 4, -2.5], { unit: "cm" })).toBe(96);
});

test("a figure graded away to nothing is refused", () => {
  expect(run(GRADE, [10, 2, -6], { unit: "cm" })).toMatchObject({
    refusal: "sizes must leave a length above 0: a base of 10 cm comes to -2 cm",
  });
});
