import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { outsideBy } from "../../../src/lay/fault.ts";
import { noFitPolygon } from "../../../src/lay/no-fit-polygon.ts";
import { crossing, signedArea } from "../../../src/lay/outline.ts";
import { seeded } from "../../../src/lay/random.ts";
import { simplified } from "../../../src/lay/simplify.ts";
import { blob } from "./blobs.ts";

describe("an outline with fewer points", () => {
  it("holds the whole of the old one, does not cross itself, and is hardly larger (seed 3)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 31 }), fc.integer({ min: 20, max: 200 }), (seed, points) => {
        const outline = blob(seeded(seed), points, 10, 6);
        const fewer = simplified(outline, 30, 0.1);
        expect(crossing(fewer)).toBeNull();
        expect(outsideBy(outline, fewer)).toBeLessThan(1e-9);
        expect(fewer.length).toBeLessThanOrEqual(outline.length);
        expect(signedArea(fewer) / signedArea(outline)).toBeLessThan(1.05);
      }),
      { seed: 3, numRuns: 100 },
    );
  });

  it("leaves a polygon of few points as it is", () => {
    const square = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ] as const;
    expect(simplified(square, 30, 0.1)).toEqual(square);
    expect(noFitPolygon(square, simplified(square, 30, 0.1))).toHaveLength(1);
  });
});
