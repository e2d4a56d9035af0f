import fc from "fast-check";
import { expect, test } from "vitest";
import { SMOCK_WIDTH } from "../../../functions/pleats/SMOCK_WIDTH.ts";
import { calls } from "../calls.ts";

const { figure, refusal, step } = calls(SMOCK_WIDTH, "in");

test("twelve inches of smocking take about forty-eight of cloth", () => {
  // GA-09, rule printed, "about one-fourth", within an eighth of it: "Construction of Clothing", University of
  // Wisconsin digital collection.
  for (const dots of [1 / 4, 3 / 8, 1 / 2]) expect(Math.abs(figure(12, dots) - 48)).toBeLessThanOrEqual(6);
  expect(figure(12, 1 / 4)).toBe(48);
});

test("there is a whole tube between any two dots, never less cloth than asked for nor a whole tube more", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 2, max: 60, noNaN: true }),
      fc.double({ min: 0.1, max: 1, noNaN: true }),
      fc.double({ min: 1, max: 6, noNaN: true }),
      (finished, dots, ratio) => {
        const args = [finished, dots, ratio] as const;
        const tubes = step("tubes", ...args);
        expect(figure(...args)).toBeCloseTo((step("dots_marked", ...args) - 1) * dots, 9);
        expect(figure(...args)).toBeGreaterThan(finished * ratio - 1e-7);
        expect(figure(...args)).toBeLessThan(finished * ratio + dots);
        expect(tubes * step("tube_width", ...args)).toBeCloseTo(finished, 9);
      },
    ),
    { seed: 60 },
  );
});

test("cloth that would have to grow, and dots on one another, are refused", () => {
  expect(refusal(12, 0.25, 0.5)).toBe("ratio must be at least 1, not 0.5");
  expect(refusal(12, 0)).toBe("dots must be at least 1/32 in, not 0");
});
