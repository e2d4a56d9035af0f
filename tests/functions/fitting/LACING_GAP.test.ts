import { expect, test } from "vitest";
import { LACING_GAP } from "../../../functions/fitting/LACING_GAP.ts";
import { run } from "../../../functions/run.ts";

const gap = (...args: number[]) => run(LACING_GAP, args, { unit: "in" });

test("garment and gaps together go once round the laced body", () => {
  expect(26 + 2 * (gap(30, 26, 1.5, 2) as number)).toBeCloseTo(28.5, 12);
});

test("stays too large to lace so tight show a negative gap", () => {
  expect(gap(28, 28, 2)).toBe(-2);
});

test("lacing in by more than a third is refused", () => {
  expect(gap(30, 18, 12)).toMatchObject({
    refusal:
      "drawn_in must be less than a third of body, not 12 in against 30 in: nobody can be laced so tight safely",
  });
  expect(LACING_GAP.cautions).toMatch(/breathing.*numbness/);
});
