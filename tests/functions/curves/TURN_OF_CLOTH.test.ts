import { expect, test } from "vitest";
import { TURN_OF_CLOTH } from "../../../functions/curves/TURN_OF_CLOTH.ts";
import { run } from "../../../functions/run.ts";

test("outer arc less inner arc, however tight the bend", () => {
  for (const [radius, degrees] of [[0.01, 180], [3, 180], [12, 75], [0.5, 360]] as const) {
    const turn = (degrees * Math.PI) / 180;
    const stack = 3 * 0.15;
    expect(run(TURN_OF_CLOTH, [0.15, 3, degrees], { unit: "cm" })).toBeCloseTo((radius + stack) * turn - radius * turn, 12);
  }
}); // biome-ignore format: a table

test("all the way round it is what a layer adds to a girth", () => {
  // GI-01, computed: a layer of 3 mm adds 6π mm = 18.8495559215 mm.
  expect(run(TURN_OF_CLOTH, [0.3, 1, 360], { unit: "cm" })).toBeCloseTo(1.88495559215, 10);
});
