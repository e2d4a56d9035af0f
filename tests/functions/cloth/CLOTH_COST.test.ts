import { expect, test } from "vitest";
import { CLOTH_COST } from "../../../functions/cloth/CLOTH_COST.ts";
import { run } from "../../../functions/run.ts";

test("a price by the yard and the same by the metre come to the same money", () => {
  const inches = run(CLOTH_COST, [100, 9.144, 36], { unit: "in" }) as number;
  const metric = run(CLOTH_COST, [254, 10, 100], { unit: "cm" }) as number;
  expect(inches).toBeCloseTo(metric, 9);
});
