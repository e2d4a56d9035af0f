import fc from "fast-check";
import { expect, test } from "vitest";
import { TAKE_IN_EACH } from "../../../functions/fitting/TAKE_IN_EACH.ts";
import { run } from "../../../functions/run.ts";

test("all the marks together are the total", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 80 }),
      fc.integer({ min: 1, max: 12 }),
      fc.constantFrom(1, 2),
      (eighths, seams, edges) => {
        const each = run(TAKE_IN_EACH, [eighths / 8, seams, edges], { unit: "in" }) as number;
        let sum = 0;
        for (let i = 0; i < seams * edges; i += 1) sum += each;
        expect(sum).toBeCloseTo(eighths / 8, 10);
      },
    ),
    { seed: 21 },
  );
});

test("no seams, half a seam or three edges are refused", () => {
  const refused = (...args: number[]) => run(TAKE_IN_EACH, args, { unit: "in" });
  expect(refused(2, 0)).toMatchObject({ refusal: "seams must be at least 1, not 0" });
  expect(refused(2, 2.5)).toMatchObject({ refusal: "seams must be a whole number, not 2.5" });
  expect(refused(2, 2, 3)).toMatchObject({ refusal: "edges must be at most 2, not 3" });
});
