import { expect, test } from "vitest";
import { DART_INTAKE } from "../../../functions/curves/DART_INTAKE.ts";
import { run } from "../../../functions/run.ts";

const intake = (...args: number[]) => run(DART_INTAKE, args, { unit: "in" });

test("darts, seam and the finished edge add up to the edge", () => {
  for (const [edge, finished, darts, at_seams] of [[26, 19, 3, 1], [15, 15, 1, 0], [40, 10.5, 7, 3]] as const)
    expect(finished + at_seams + darts * (intake(edge, finished, darts, at_seams) as number)).toBeCloseTo(edge, 12);
}); // biome-ignore format: a table

test("an edge already too short is refused", () => {
  expect(intake(10, 9, 1, 2)).toMatchObject({
    refusal: "finished must be at most 8 in, which the seams leave of the edge, not 9 in",
  });
});
