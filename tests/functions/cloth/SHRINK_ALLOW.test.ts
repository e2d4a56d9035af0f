import fc from "fast-check";
import { expect, test } from "vitest";
import { SHRINK_ALLOW } from "../../../functions/cloth/SHRINK_ALLOW.ts";
import { SHRUNK } from "../../../functions/cloth/SHRUNK.ts";
import { run } from "../../../functions/run.ts";

test("what is cut so shrinks to what was wanted", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 1000, noNaN: true }),
      fc.double({ min: -0.2, max: 0.8, noNaN: true }),
      (length, share) => {
        const cut = run(SHRINK_ALLOW, [length, share], { unit: "in" });
        expect(run(SHRUNK, [cut as number, share], { unit: "in" })).toBeCloseTo(length, 8);
      },
    ),
    { seed: 5 },
  );
});

test("a share added on is too short for the same share lost", () => {
  // SH-06: 100 × 1.1 = 110, and a tenth of that lost leaves 99 (geometry).
  expect(run(SHRUNK, [110, 0.1], { unit: "cm" })).toBeCloseTo(99, 9);
  expect(run(SHRINK_ALLOW, [100, 0.1], { unit: "cm" })).toBeGreaterThan(110);
});
