import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { M } from "../../../functions/tape/M.ts";

test("a metre is a little over 39.37 in", () => {
  // NIST SP 811, appendix B.8: 1 in = 2.54 cm. The U.S. act of 1866 said 39.37 in (Wurtele,
  // Standard Measures, 1882), two parts in a million less.
  const metre = run(M, [1], { unit: "in" }) as number;
  expect(metre).toBeCloseTo(100 / 2.54, 12);
  expect(metre / 39.37 - 1).toBeCloseTo(2e-6, 8);
});
