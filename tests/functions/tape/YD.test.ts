import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { M } from "../../../functions/tape/M.ts";
import { YD } from "../../../functions/tape/YD.ts";

test("a yard is 0.9144 m exactly", () => {
  // International yard of 1959; NIST SP 811, appendix B.8.
  expect(run(YD, [1], { unit: "cm" })).toBe(91.44);
  expect(run(M, [0.9144], { unit: "in" })).toBe(run(YD, [1], { unit: "in" }));
});
