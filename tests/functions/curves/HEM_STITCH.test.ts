import { expect, test } from "vitest";
import { HEM_STITCH } from "../../../functions/curves/HEM_STITCH.ts";
import { run } from "../../../functions/run.ts";

test("for a one-inch hemstitched hem the threads are drawn 2 1/4 in from the edge", () => {
  // HE-01, rule printed: Kinne & Cooley, Clothing and Health, 1916, How to make the hemstitch.
  expect(run(HEM_STITCH, [1, 0.25], { unit: "in" })).toBe(2.25);
});

test("folded in paper: the raw edge turned in, the hem turned up, its edge meets the drawn line", () => {
  // A strip with the raw edge at 0; creases at the turning and at the fold; the hem's top comes to lie on the strip.
  const [depth, turning] = [3, 0.7];
  const fold = turning + depth;
  const topOfHem = fold + (fold - turning);
  expect(run(HEM_STITCH, [depth, turning], { unit: "cm" })).toBeCloseTo(topOfHem, 12);
});
