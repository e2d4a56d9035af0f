import { expect, test } from "vitest";
import { SHRUNK } from "../../../functions/cloth/SHRUNK.ts";
import { run } from "../../../functions/run.ts";

test("two washes, each losing a share of what is left, leave the product of what each leaves", () => {
  const once = run(SHRUNK, [100, 0.05], { unit: "cm" }) as number;
  expect(run(SHRUNK, [once, 0.02], { unit: "cm" })).toBeCloseTo(100 * 0.95 * 0.98, 9);
});

test("cloth that grows is longer after", () => {
  expect(run(SHRUNK, [50, -0.02], { unit: "cm" })).toBeCloseTo(51, 9);
});
