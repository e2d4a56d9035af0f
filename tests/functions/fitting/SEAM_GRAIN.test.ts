import { expect, test } from "vitest";
import { SEAM_GRAIN } from "../../../functions/fitting/SEAM_GRAIN.ts";
import { run } from "../../../functions/run.ts";
import { setting } from "../laws.ts";
import { blockOf, seamsOf } from "./seam-lists.ts";

// Derivation: a right triangle of sides 3 and 4 has an angle of atan(3/4) beside its longer side.
test("a seam that runs 3 across and 4 down lies 36.87 degrees off the grain, and as far from the other grain when the piece lies across", () => {
  const gore = "M 0 0 L 6 0 L 9 4 L 0 4 Z | edges waist, side, hem, centre";
  const pieces = (grain: string) =>
    blockOf(["Piece", "Outline", "Grain"], [["gore", gore, grain], ["other", gore, "straight"]]); // biome-ignore format: rows
  const seams = seamsOf(["gore", "side", "other", "centre"]);
  const ask = (grain: string) => run(SEAM_GRAIN, [seams, pieces(grain), "gore", "side"], setting("in"));
  const lean = (Math.atan2(3, 4) * 180) / Math.PI;
  expect(ask("straight")).toBeCloseTo(lean, 9);
  expect(ask("cross")).toBeCloseTo(90 - lean, 9);
  expect(ask("bias")).toBeCloseTo(45 + lean, 9);
});

// Derivation: the mean angle along a quarter circle that goes from one grain to the other is 45 degrees.
test("a quarter circle lies at 45 degrees in the mean", () => {
  const pieces = blockOf(["Piece", "Outline"], [["a", "M 0 0 L 10 0 A 10 10 0 0 1 0 10 Z | edges top, hem, centre"], ["b", "M 0 0 L 9 0 L 9 9 L 0 9 Z | edges top, side, foot, centre"]]); // biome-ignore format: rows
  const angle = run(SEAM_GRAIN, [seamsOf(["a", "hem", "b", "top"]), pieces, "a", "hem"], setting("cm"));
  expect(angle).toBeCloseTo(45, 3);
});
