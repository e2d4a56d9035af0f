import { expect, test } from "vitest";
import { BIAS_SPACING } from "../../../functions/cloth/BIAS_SPACING.ts";
import { run } from "../../../functions/run.ts";

test("lines that far apart along the selvedge are a strip's width apart square across", () => {
  // BI-07: 1.5 √2 (geometry, 50 digits); the distance of parallel lines x − y = c is Δc / √2.
  const along = run(BIAS_SPACING, [1.5], { unit: "in" }) as number;
  expect(along).toBeCloseTo(2.1213203436, 10);
  const [a, b] = [1, -1];
  expect(along / Math.hypot(a, b)).toBeCloseTo(1.5, 12);
});
