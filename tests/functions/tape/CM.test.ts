import { expect, test } from "vitest";
import { run } from "../../../functions/run.ts";
import { CM } from "../../../functions/tape/CM.ts";

test("127 cm are 50 in exactly", () => {
  // NIST SP 811, appendix B.8: 1 in = 2.54 cm, exact; 50 × 2.54 = 127.
  expect(run(CM, [127], { unit: "in" })).toBe(50);
});

test("a figure taken off stays negative", () => {
  expect(run(CM, [-2.54], { unit: "in" })).toBe(-1);
});
