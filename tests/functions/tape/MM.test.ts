import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { MM } from "../../../functions/tape/MM.ts";

test("a quarter inch is 6.35 mm", () => {
  // NIST SP 811, appendix B.8: 1 in = 25.4 mm, exact.
  expect(run(MM, [6.35], { unit: "in" })).toBe(0.25);
  expect(run(MM, [6.35], { unit: "cm" })).toBeCloseTo(0.635, 15);
});
