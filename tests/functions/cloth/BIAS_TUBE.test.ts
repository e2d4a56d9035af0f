import fc from "fast-check";
import { expect, test } from "vitest";
import { BIAS_TUBE } from "../../../functions/cloth/BIAS_TUBE.ts";
import { signedArea } from "../../../functions/geometry/strokes.ts";
import { isRefused, run } from "../../../functions/run.ts";

const tube = (...args: number[]) => run(BIAS_TUBE, args, { unit: "in" }) as number;

test("where whole rounds fill the tube, the strip has the area of the square to the last thread", () => {
  // Eight rounds: the strip is the height of the slanting piece over 8.
  const strip = 24 / Math.SQRT2 / 8;
  expect(tube(24, strip) * strip).toBeCloseTo(24 * 24, 9);
});

test("the joined piece is as large as the square and loses less than one round", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 60, noNaN: true }),
      fc.double({ min: 0.5, max: 4, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (side, strip, seam) => {
        const s = side - 2 * seam;
        const area = Math.abs(
          signedArea([
            [0, 0],
            [s, s],
            [s, 2 * s],
            [0, s],
          ]),
        );
        const found = tube(side, strip, seam);
        expect(found * strip).toBeLessThanOrEqual(area * (1 + 1e-9));
        expect(found * strip).toBeGreaterThan(area - s * Math.SQRT2 * strip * (1 + 1e-9));
      },
    ),
    { seed: 10 },
  );
});

test("seams that eat the square are refused", () => {
  const answer = run(BIAS_TUBE, [2, 0.5, 1], { unit: "in" });
  expect(isRefused(answer) && answer.refusal).toBe(
    "seam must leave part of the square: the joins take 2 in of a side of 2 in",
  );
});
