import { expect, test } from "vitest";
import { BAND_LENGTH } from "../../../functions/curves/BAND_LENGTH.ts";
import { run } from "../../../functions/run.ts";

test("a 24-inch waist takes a band of 26 1/2 in", () => {
  // HE-04, rule printed: Johnson, It's Fun to Sew Aprons and Skirts, L-86, 1964.
  expect(run(BAND_LENGTH, [24], { unit: "in" })).toBe(26.5);
});
