import fc from "fast-check";
import { expect, test } from "vitest";
import { ARC_CHORD } from "../../../functions/curves/ARC_CHORD.ts";
import { ARC_LENGTH } from "../../../functions/curves/ARC_LENGTH.ts";
import { ARC_RADIUS } from "../../../functions/curves/ARC_RADIUS.ts";
import { ARC_RISE } from "../../../functions/curves/ARC_RISE.ts";
import { calls } from "../calls.ts";

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("radius, chord and rise of a circle give one another, from its angle", () => {
  fc.assert(
    fc.property(length(4, 300), length(0.02, Math.PI / 2), (radius, half) => {
      // By trigonometry: half the chord is r sin a, the rise r(1 − cos a), the arc 2ra.
      const [chord, rise] = [2 * radius * Math.sin(half), 2 * radius * Math.sin(half / 2) ** 2];
      const near = (found: number, wanted: number) => expect(Math.abs(found / wanted - 1)).toBeLessThan(1e-9);
      if (rise > 0.01) near(calls(ARC_RADIUS, "cm").figure(chord, rise), radius);
      // Near half a circle the rise changes fast with the chord.
      if (half < 1.5) near(calls(ARC_RISE, "cm").figure(radius, chord), rise);
      near(calls(ARC_CHORD, "cm").figure(radius, rise), chord);
      near(calls(ARC_LENGTH, "cm").figure(chord, rise), 2 * radius * half);
    }),
    { seed: 41, numRuns: 200 },
  );
});
