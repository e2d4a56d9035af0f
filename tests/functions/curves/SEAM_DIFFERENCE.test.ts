import { expect, test } from "vitest";
import { SEAM_DIFFERENCE } from "../../../functions/curves/SEAM_DIFFERENCE.ts";
import { run } from "../../../functions/run.ts";

test("told the other way round the difference changes its sign", () => {
  const between = (a: number, b: number) => run(SEAM_DIFFERENCE, [a, b], { unit: "cm" }) as number;
  expect(between(41.3, 40)).toBeCloseTo(1.3, 12);
  expect(between(40, 41.3)).toBe(-between(41.3, 40));
});
