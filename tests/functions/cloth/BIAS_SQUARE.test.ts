import fc from "fast-check";
import { expect, test } from "vitest";
import { BIAS_SQUARE } from "../../../functions/cloth/BIAS_SQUARE.ts";
import { BIAS_TUBE } from "../../../functions/cloth/BIAS_TUBE.ts";
import { run } from "../../../functions/run.ts";

test("the square gives the wanted length, and one a thousandth smaller does not", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 2000, noNaN: true }),
      fc.double({ min: 0.5, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 0.5, noNaN: true }),
      (length, strip, seam) => {
        const side = run(BIAS_SQUARE, [length, strip, seam], { unit: "in" }) as number;
        const gives = (s: number) => run(BIAS_TUBE, [s, strip, seam], { unit: "in" }) as number;
        fc.pre(side < 390);
        expect(gives(side * (1 + 1e-8))).toBeGreaterThanOrEqual(length * (1 - 1e-6));
        const less = 2 * seam + (side - 2 * seam) * 0.999;
        if (less >= 1) expect(gives(less)).toBeLessThan(length);
        expect(side * side).toBeGreaterThanOrEqual(length * strip * (1 - 1e-9));
      },
    ),
    { seed: 11, numRuns: 300 },
  );
});
