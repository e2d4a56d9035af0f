import fc from "fast-check";
import { expect, test } from "vitest";
import { readTape } from "../../../functions/fractions.ts";
import { shownApart, shownChange } from "../../../src/engine/apart.ts";

const SEED = 20261127;
const inches = { unit: "in", mark: "1/8" } as const;
const metric = { unit: "cm", mark: "1 mm" } as const;

test("a change is never a mark where both figures read the same", () => {
  expect(shownChange(31.95, 32.05, "length", inches)).toEqual({
    before: "31 15/16",
    after: "32 1/16",
    change: "+1/8",
  });
  expect(shownChange(32, 32.125, "length", inches)).toEqual({
    before: "32",
    after: "32 1/8",
    change: "+1/8",
  });
  expect(shownChange(32.01, 32, "length", inches)).toEqual({ before: "32.01", after: "32", change: "−0.01" });
  expect(shownChange(32, 32.000001, "length", inches)).toEqual({ before: "32", after: "32", change: "none" });
  expect(shownChange(3, 5, "count", inches)).toEqual({ before: "3", after: "5", change: "+2" });
});

test("what was, what is and what it gained always add up as they are shown", () => {
  const figure = fc.double({ min: 0, max: 300, noNaN: true });
  const gain = fc.oneof(
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.double({ min: -100, max: 100, noNaN: true }),
  );
  fc.assert(
    fc.property(figure, gain, fc.constantFrom(inches, metric), (before, off, rule) => {
      const shown = shownChange(before, before + off, "length", rule);
      const read = (text: string) => readTape(text.replace(/^\+/, ""), rule.unit)!.length;
      const change = shown.change === "none" ? 0 : read(shown.change);
      expect(Math.abs(read(shown.after) - read(shown.before) - change), JSON.stringify(shown)).toBeLessThan(
        1e-6,
      );
      if (Math.abs(off) > 0.001) expect(shown.change).not.toBe("none");
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test("figures side by side read apart where they differ", () => {
  expect(shownApart([32, 32.05, 40], "length", inches)).toEqual(["32", "32 1/16", "40"]);
  expect(shownApart([32, 32, 40.3], "length", inches)).toEqual(["32", "32", "40 1/4"]);
  expect(shownApart([81.28, 81.31], "length", metric)).toEqual(["81.28", "81.31"]);
});
