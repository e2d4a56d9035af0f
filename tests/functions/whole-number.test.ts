import { expect, test } from "vitest";
import { roundDownToWhole, roundUpToWhole } from "../../functions/whole-number.ts";
import { evaluate } from "./laws.ts";

test("counts are those that a spreadsheet's rounding gives, near whole numbers too", () => {
  for (const whole of [0, 1, 3, 120]) {
    for (const off of [0, 1e-9, -1e-9, 1e-7, -1e-7, 0.3]) {
      const x = Math.abs(whole + off);
      expect(roundUpToWhole(x), `up ${x}`).toBe(evaluate(`=ROUNDUP(ROUND(${x.toFixed(12)}; 8); 0)`, "in"));
      expect(roundDownToWhole(x), `down ${x}`).toBe(evaluate(`=INT(ROUND(${x.toFixed(12)}; 8))`, "in"));
    }
  }
});
