import { expect, test } from "vitest";
import { HOOK_COUNT } from "../../../functions/notions/HOOK_COUNT.ts";
import { run } from "../../../functions/run.ts";

test("one hook fewer would gape: the gaps would be wider than told", () => {
  for (const [edge, spacing, inset] of [
    [14.25, 1, 0.125],
    [36, 1.75, 0.5],
    [9, 2, 0],
  ] as const) {
    const n = run(HOOK_COUNT, [edge, spacing, inset], { unit: "in" }) as number;
    expect((edge - 2 * inset) / (n - 1)).toBeLessThanOrEqual(spacing + 1e-9);
    expect((edge - 2 * inset) / (n - 2)).toBeGreaterThan(spacing);
  }
});

test("counted off by hand: hooks at 1/8, 1 1/8 ... 6 1/8 in of 6 1/4", () => {
  expect(run(HOOK_COUNT, [6.25, 1], { unit: "in" })).toBe(7);
});
