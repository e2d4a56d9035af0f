import fc from "fast-check";
import { expect, test } from "vitest";
import { OVAL_GIRTH } from "../../../functions/body/OVAL_GIRTH.ts";
import { run } from "../../../functions/run.ts";

const round = (width: number, depth: number) => run(OVAL_GIRTH, [width, depth], { unit: "cm" }) as number;

test("perimeters of ellipses are those of the handbook", () => {
  // 4 a E(1 − b²/a²), DLMF 19.30 (Abramowitz & Stegun 17.1, from memory), to 12 decimals; semi-axes told.
  for (const [a, b, perimeter] of [
    [2, 1, 9.688448220548],
    [5, 3, 25.526998863398],
    [10, 1, 40.639741801009],
    [15, 10, 79.327197946453],
  ] as const) {
    // biome-ignore format: a table
    expect(round(2 * a, 2 * b)).toBeCloseTo(perimeter, 11);
  }
});

test("it is the sum of short steps round the oval, whichever way it is turned", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 60, noNaN: true }),
      fc.double({ min: 5, max: 60, noNaN: true }),
      (width, depth) => {
        // Equal steps of the parameter: for a periodic smooth function the plain sum converges at once.
        const steps = 2000;
        let sum = 0;
        for (let i = 0; i < steps; i += 1) {
          const t = (2 * Math.PI * i) / steps;
          sum += Math.hypot((width / 2) * Math.sin(t), (depth / 2) * Math.cos(t));
        }
        expect(round(width, depth)).toBeCloseTo((sum * 2 * Math.PI) / steps, 8);
        expect(round(depth, width)).toBeCloseTo(round(width, depth), 11);
      },
    ),
    { seed: 16, numRuns: 40 },
  );
});
