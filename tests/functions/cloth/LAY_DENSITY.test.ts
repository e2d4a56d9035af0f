import { expect, test } from "vitest";
import { LAY_DENSITY } from "../../../functions/cloth/LAY_DENSITY.ts";
import { YARDAGE } from "../../../functions/cloth/YARDAGE.ts";
import { explain, isRefused, run } from "../../../functions/run.ts";
import { quickLay } from "../../../src/lay/quick.ts";

const setting = { unit: "in", plan: quickLay } as const;
const panel = "M 0 0 A 60 60 0 0 0 20 -4 L 28 20 A 85 85 0 0 1 -6 26 Z";

test("with the length that YARDAGE gives, the density is the one its lay has", () => {
  const lay = explain(YARDAGE, [[panel, panel], [2, 4], 54, false, 0, 0, [null, "yes"]], setting);
  const density = run(LAY_DENSITY, [[panel, panel], [2, 4], 54, lay.answer as number], setting);
  // The lay has chords for curves, the density the curves themselves.
  expect(density).toBeCloseTo(lay.steps.find(({ name }) => name === "density")!.value as number, 3);
});

test("a length that the pieces' own area overfills is refused with the least that could do", () => {
  const answer = run(LAY_DENSITY, [["M 0 0 L 54 0 L 54 10 L 0 10 Z"], [2], 54, 18], setting);
  expect(isRefused(answer) && answer.refusal).toBe(
    "length must be at least 20 in, which the pieces cover without a gap between them, not 18 in",
  );
});

test("squares that tile the cloth cover all of it", () => {
  // Duijvestijn 1978: 21 squares fill 112 × 112.
  const sides = [50, 42, 37, 35, 33, 29, 27, 25, 24, 19, 18, 17, 16, 15, 11, 9, 8, 7, 6, 4, 2];
  const squares = sides.map((side) => `M 0 0 H ${side} V ${side} H 0 Z`);
  expect(run(LAY_DENSITY, [squares, sides.map(() => 1), 112, 112], setting)).toBe(1);
});
