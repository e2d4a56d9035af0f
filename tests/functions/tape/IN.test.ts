import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { IN } from "../../../functions/tape/IN.ts";

test("an inch is 25.4 mm exactly", () => {
  // NIST SP 811, appendix B.8: inch to metre, 2.54 E-02, exact.
  expect(run(IN, [1], { unit: "cm" })).toBe(2.54);
  expect(run(IN, [39.37], { unit: "cm" })).toBeCloseTo(99.9998, 10);
});

test("figures are refused in a sentence when they are words or past any cloth", () => {
  expect(run(IN, ["ten"], { unit: "in" })).toMatchObject({ refusal: 'x must be a number, not "ten"' });
  expect(run(IN, [1e9], { unit: "in" })).toMatchObject({
    refusal: "x must be at most 40000, not 1000000000",
  });
});
