import fc from "fast-check";
import { expect, test } from "vitest";
import { BUY_LENGTH } from "../../../functions/cloth/BUY_LENGTH.ts";
import { run } from "../../../functions/run.ts";

const buy = (...args: (number | null)[]) => run(BUY_LENGTH, args, { unit: "in" }) as number;

test("it buys whole cuts, enough and never a cut too many", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1000, noNaN: true }),
      fc.double({ min: 0.5, max: 36, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (length, step, spare) => {
        const bought = buy(length, step, spare);
        const wanted = length * (1 + spare);
        expect(Math.abs(bought / step - Math.round(bought / step))).toBeLessThan(1e-9);
        expect(bought).toBeGreaterThanOrEqual(wanted - 1e-6);
        expect(bought - wanted).toBeLessThan(step);
      },
    ),
    { seed: 1 },
  );
});

test("thirds of a yard that add up to a whole one but for the last digit are not put up a cut", () => {
  expect(buy(36 * (0.1 + 0.2) + 36 * 0.7, 36)).toBe(36);
});

test("five yards in eighths stay five yards", () => {
  expect(buy(180)).toBe(180);
  expect(buy(180.01)).toBe(184.5);
});
