import { expect, test } from "vitest";
import { ELASTIC_LENGTH } from "../../../functions/notions/ELASTIC_LENGTH.ts";
import { run } from "../../../functions/run.ts";

test("joined and drawn to the girth, it is stretched by the share of itself that it was short", () => {
  const cut = run(ELASTIC_LENGTH, [30, 0.2, 1], { unit: "in" }) as number;
  expect(30 / (cut - 1)).toBeCloseTo(1 / (1 - 0.2), 12);
});

test("a tenth less than a 30 in waist and an inch to join is 28 in", () => {
  // Common practice.
  expect(run(ELASTIC_LENGTH, [30], { unit: "in" })).toBeCloseTo(28, 12);
});
