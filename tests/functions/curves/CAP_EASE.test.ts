import { expect, test } from "vitest";
import { CAP_EASE } from "../../../functions/curves/CAP_EASE.ts";
import { explain, run } from "../../../functions/run.ts";

test("a cap shorter than the armhole has ease below zero", () => {
  expect(run(CAP_EASE, [44, 46], { unit: "cm" })).toBe(-2);
});

test("the ease is told as a share of the armhole too", () => {
  const { steps } = explain(CAP_EASE, [46.2, 44], { unit: "cm" });
  expect(steps.find(({ name }) => name === "share")?.value).toBeCloseTo(0.05, 12);
});
