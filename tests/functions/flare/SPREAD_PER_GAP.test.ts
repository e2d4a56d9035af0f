import fc from "fast-check";
import { expect, test } from "vitest";
import { SPREAD_PER_GAP } from "../../../functions/flare/SPREAD_PER_GAP.ts";
import { SPREAD_TOTAL } from "../../../functions/flare/SPREAD_TOTAL.ts";
import { calls } from "../calls.ts";

const inches = calls(SPREAD_PER_GAP, "in");
const metric = calls(SPREAD_PER_GAP, "cm");

test("thirty centimetres over six slits are five each", () => {
  // SP-01, computed: six sections with half gaps at both edges make six gaps in all.
  expect(metric.figure(70, 100, 6)).toBeCloseTo(5, 12);
});

test("half waist 16.5 to half hip 23.5 over five sections is 1.4 a gap", () => {
  // Common practice, no source to name.
  expect(inches.figure(16.5, 23.5, 5)).toBeCloseTo(1.4, 12);
});

test("with full gaps at both edges the hem would gain 8.4, not 7, and the Working says so", () => {
  expect(inches.step("gained_with_full_edges", 16.5, 23.5, 5)).toBeCloseTo(8.4, 12);
  expect(inches.step("too_much_with_full_edges", 16.5, 23.5, 5)).toBeCloseTo(1.4, 12);
  expect(inches.step("too_much_with_full_edges", 16.5, 23.5, 5, 1)).toBeCloseTo(0, 12);
});

test("strips and gaps laid end to end come to the hem, however many", () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 40 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, share) => {
      const gap = metric.figure(40, 63, n, share);
      let end = share * gap;
      for (let i = 0; i < n; i += 1) end += 40 / n + (i < n - 1 ? gap : share * gap);
      expect(end).toBeCloseTo(63, 9);
      expect(calls(SPREAD_TOTAL, "cm").figure(gap, n, share)).toBeCloseTo(23, 9);
    }),
    { seed: 31 },
  );
});

test("a hem shorter than the top, and one section with plain edges, are refused", () => {
  expect(inches.refusal(30, 20, 5)).toMatch(/^hem must be at least as long as top, not 20 in against 30 in/);
  expect(inches.refusal(20, 30, 1, 0)).toBe("sections must be at least 2 when edge_share is 0, not 1");
  expect(inches.refusal(20, 30, 2.5)).toBe("sections must be a whole number, not 2.5");
});
