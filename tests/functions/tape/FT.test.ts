import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { FT } from "../../../functions/tape/FT.ts";

test("a foot is 0.3048 m, a third of a yard", () => {
  // NIST SP 811, appendix B.8, exact.
  expect(run(FT, [1], { unit: "cm" })).toBe(30.48);
  expect(run(FT, [3], { unit: "in" })).toBe(36);
});
