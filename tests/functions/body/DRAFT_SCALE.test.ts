import { expect, test } from "vitest";
import { DRAFT_SCALE } from "../../../functions/body/DRAFT_SCALE.ts";
import { run } from "../../../functions/run.ts";

const scaled = (...args: number[]) => run(DRAFT_SCALE, args, { unit: "in" });

test("for the wearer it was printed for a figure stays as printed", () => {
  expect(scaled(7.375, 36, 36)).toBe(7.375);
  expect(scaled(7.375, 36, 44, 0)).toBe(7.375);
});

test("parts of the breast stay the same parts, and sums stay sums", () => {
  // A third and two thirds of breast 36 together, brought to breast 42, are breast 42.
  expect((scaled(12, 36, 42) as number) + (scaled(24, 36, 42) as number)).toBeCloseTo(42, 12);
});

test("centimetres beside inches are noticed", () => {
  expect(scaled(9, 36, 250)).toMatchObject({ refusal: "wearer must be at most 200 in, not 250 in" });
  expect(scaled(9, 18, 100)).toMatchObject({
    refusal: "wearer must be the same measurement in the same unit as drafted_for, not 100 in against 18 in",
  });
});
