import { expect, test } from "vitest";
import { TIER_WIDTH } from "../../../functions/flare/TIER_WIDTH.ts";
import { GATHER_WIDTH } from "../../../functions/pleats/GATHER_WIDTH.ts";
import { calls } from "../calls.ts";

const { figure } = calls(TIER_WIDTH, "in");

test("each tier is gathered to the one above at the same fullness", () => {
  let above = 38;
  for (let tier = 1; tier <= 6; tier += 1) {
    above = calls(GATHER_WIDTH, "in").figure(above, 1.6);
    expect(figure(38, 1.6, tier)).toBeCloseTo(above, 9);
  }
});
